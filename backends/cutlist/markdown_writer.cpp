#include <fmt/format.h>

#include "backends/cutlist/cells.hpp"
#include "backends/cutlist/writers.hpp"
#include "backends/words.hpp"

namespace rodwright {
namespace {

std::string table_row(const Cells& cells) {
    std::string line = "|";
    for (const std::string& cell : cells) line += " " + markdown_text(cell) + " |";
    return line + "\n";
}

std::string table_head(const std::vector<Column>& columns) {
    Cells titles;
    std::string rule = "|";
    for (const Column& column : columns) {
        titles.push_back(column.title);
        rule += column.right ? " ---: |" : " --- |";
    }
    return table_row(titles) + rule + "\n";
}

}  // namespace

std::string cut_list_markdown(const CutList& list) {
    std::string text = fmt::format("# {}\n\n", markdown_text(list.title));
    for (const std::string& line : cut_list_preface(list)) text += line + "\n";
    for (const CutGroup& group : list.groups) {
        text += fmt::format("\n## {}\n\n{}", markdown_text(capitalised(group_title(group, list.style))),
                            table_head(cut_columns(list)));
        for (const CutRow& row : group.rows) text += table_row(cut_cells(row, list, list.style));
    }
    if (list.hardware.empty()) return text;
    text += "\n## Hardware\n\n" + table_head(hardware_columns());
    for (const HardwareRow& row : list.hardware) text += table_row(hardware_cells(row, list.style));
    return text;
}

}  // namespace rodwright
