#include <fmt/format.h>

#include <algorithm>

#include "backends/cutlist/cells.hpp"
#include "backends/cutlist/writers.hpp"
#include "backends/words.hpp"

namespace rodwright {
namespace {

using Widths = std::vector<std::size_t>;

void widen(Widths& widths, const Cells& cells) {
    for (std::size_t i = 0; i < cells.size(); ++i) widths[i] = std::max(widths[i], character_count(cells[i]));
}

Widths title_widths(const std::vector<Column>& columns) {
    Widths widths;
    for (const Column& column : columns) widths.push_back(character_count(column.title));
    return widths;
}

std::string aligned(const std::vector<Column>& columns, const Widths& widths, const Cells& cells) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::string room(widths[i] - character_count(cells[i]), ' ');
        line += "  " + (columns[i].right ? room + cells[i] : cells[i] + room);
    }
    line.erase(line.find_last_not_of(' ') + 1);
    return line + "\n";
}

std::string title_line(const std::vector<Column>& columns, const Widths& widths) {
    Cells titles;
    for (const Column& column : columns) titles.push_back(column.title);
    return aligned(columns, widths, titles);
}

// One width a column through all groups, so that the eye can run down the whole list.
Widths all_widths(const CutList& list) {
    Widths widths = title_widths(cut_columns(list));
    for (const CutGroup& group : list.groups) {
        for (const CutRow& row : group.rows) widen(widths, cut_cells(row, list, list.style));
    }
    return widths;
}

std::string hardware_text(const CutList& list) {
    if (list.hardware.empty()) return "";
    Widths widths = title_widths(hardware_columns());
    for (const HardwareRow& row : list.hardware) widen(widths, hardware_cells(row, list.style));
    std::string text = "\nhardware\n\n" + title_line(hardware_columns(), widths);
    for (const HardwareRow& row : list.hardware) {
        text += aligned(hardware_columns(), widths, hardware_cells(row, list.style));
    }
    return text;
}

}  // namespace

std::string cut_list_text(const CutList& list) {
    std::string text = list.title + "\n" + std::string(character_count(list.title), '=') + "\n\n";
    for (const std::string& line : cut_list_preface(list)) text += line + "\n";
    const Widths widths = all_widths(list);
    for (const CutGroup& group : list.groups) {
        text +=
            fmt::format("\n{}\n\n{}", group_title(group, list.style), title_line(cut_columns(list), widths));
        for (const CutRow& row : group.rows)
            text += aligned(cut_columns(list), widths, cut_cells(row, list, list.style));
    }
    return text + hardware_text(list);
}

}  // namespace rodwright
