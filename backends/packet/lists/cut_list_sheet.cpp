// The cut list and the hardware list, as the backend `cutlist` has them.
#include "backends/cutlist/cells.hpp"
#include "backends/packet/lists/table_sheets.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

namespace {

drawing::Table empty_table(const std::vector<rodwright::Column>& columns) {
    drawing::Table table;
    for (const rodwright::Column& column : columns) {
        table.columns.push_back({column.title, column.right ? drawing::Align::right : drawing::Align::left});
    }
    return table;
}

// As one paragraph; what stands between backquotes there is set like the rest here.
std::string preface_of(const CutList& list) {
    std::string text = joined(cut_list_preface(list), " ");
    std::erase(text, '`');
    return text;
}

// A row as it reads in the list's unit and, where its figures differ there, in the other.
std::vector<std::string> cells_of(const CutRow& row, const CutList& list, const FigureStyle& style) {
    std::vector<std::string> cells = cut_cells(row, list, style.own);
    if (!style.beside) return cells;
    const std::vector<std::string> other = cut_cells(row, list, *style.beside);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        if (cells[i] != other[i]) cells[i] += " [" + other[i] + "]";
    }
    return cells;
}

drawing::Table cut_table(const CutList& list, const FigureStyle& style) {
    drawing::Table table = empty_table(cut_columns(list));
    for (const CutGroup& group : list.groups) {
        table.rows.push_back({{group_title(group, list.style)}, true});
        for (const CutRow& row : group.rows) table.rows.push_back({cells_of(row, list, style), false});
    }
    return table;
}

drawing::Table hardware_table(const CutList& list) {
    drawing::Table table = empty_table(hardware_columns());
    table.rows.push_back({{"Hardware"}, true});
    for (const HardwareRow& row : list.hardware)
        table.rows.push_back({hardware_cells(row, list.style), false});
    return table;
}

}  // namespace

std::vector<Draft> cut_list_sheets(const Context& context) {
    const CutList list = make_cut_list(context.piece, context.input.wood);
    TablePages pages{"cut list", "Cut list", {preface_of(list)}, {cut_table(list, context.figures())}};
    if (!list.hardware.empty()) pages.tables.push_back(hardware_table(list));
    return table_sheets(context, pages);
}

}  // namespace rodwright::packet
