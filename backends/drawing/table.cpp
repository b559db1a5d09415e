#include "backends/drawing/table.hpp"

#include <algorithm>
#include <numeric>

namespace rodwright::drawing {

namespace {

constexpr double side_pad = 1.2;
constexpr double row_pad = 0.9;  // over and under a row's text
constexpr double slack = 1e-6;   // what sums of the same heights may differ by

double sum(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0);
}

// Of one line, and of its longest word: the least width it can be wrapped to.
struct Need {
    double natural = 0;
    double least = 0;
};

Need need_of(const std::string& text, FontFace face, double height, const Fonts& fonts) {
    Need need;
    for (const std::string& word : words_of(text)) {
        need.least = std::max(need.least, text_width(word, face, height, fonts));
    }
    for (const std::string& line : wrap(text, face, height, 1e9, fonts)) {
        need.natural = std::max(need.natural, text_width(line, face, height, fonts));
    }
    return need;
}

std::vector<Need> needs_of(const Table& table, double height, bool keep_whole, const Fonts& fonts) {
    std::vector<Need> needs;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        const bool whole = keep_whole && table.columns[i].whole;
        Need need = need_of(table.columns[i].title, FontFace::bold, height, fonts);
        for (const Row& row : table.rows) {
            if (row.heading) continue;
            Need cell = need_of(row.cells[i], FontFace::regular, height, fonts);
            if (whole) cell.least = cell.natural;
            need = {std::max(need.natural, cell.natural), std::max(need.least, cell.least)};
        }
        needs.push_back({need.natural + 2 * side_pad, need.least + 2 * side_pad});
    }
    return needs;
}

// All columns at their natural width if there is room, the rest shared out; otherwise each gives up the same
// part of what it has over its longest word.
std::vector<double> share_out(const std::vector<Need>& needs, double width) {
    double natural = 0;
    double least = 0;
    for (const Need& need : needs) {
        natural += need.natural;
        least += need.least;
    }
    const double part = natural <= least ? 1 : std::clamp((width - least) / (natural - least), 0.0, 1.0);
    std::vector<double> widths;
    for (const Need& need : needs) widths.push_back(need.least + part * (need.natural - need.least));
    const double stretch = width / std::max(sum(widths), 1e-9);
    for (double& each : widths) each *= stretch;
    return widths;
}

double total_least(const std::vector<Need>& needs) {
    double least = 0;
    for (const Need& need : needs) least += need.least;
    return least;
}

TableLayout::SetRow set_cells(const std::vector<std::string>& cells, FontFace face, const TableLayout& layout,
                              const Fonts& fonts) {
    TableLayout::SetRow row;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        row.cells.push_back(wrap(cells[i], face, layout.height, layout.widths[i] - 2 * side_pad, fonts));
    }
    return row;
}

TableLayout::SetRow set_heading(const std::string& text, const TableLayout& layout, const Fonts& fonts) {
    TableLayout::SetRow row;
    row.heading = true;
    row.cells.push_back(wrap(text, FontFace::bold, layout.height, layout.width() - 2 * side_pad, fonts));
    return row;
}

std::vector<std::string> lines_between(const std::vector<std::string>& lines, std::size_t from,
                                       std::size_t count) {
    const std::size_t begin = std::min(from, lines.size());
    const std::size_t end = std::min(from + count, lines.size());
    return {lines.begin() + static_cast<std::ptrdiff_t>(begin),
            lines.begin() + static_cast<std::ptrdiff_t>(end)};
}

double anchor(const Rect& cell, Align align) {
    if (align == Align::left) return cell.left + side_pad;
    return align == Align::right ? cell.right - side_pad : cell.centre().x;
}

// Draws `count` lines of the row from `line` on; returns its lower edge.
double draw_row(Sheet& sheet, const TableLayout& table, const TableLayout::SetRow& row, std::size_t line,
                std::size_t count, double left, double top, FontFace face) {
    const double bottom = top - table.row_height(count);
    double cell_left = left;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        const double width = row.heading ? table.width() : table.widths[i];
        const Rect cell{cell_left, bottom, cell_left + width, top};
        const Align align = row.heading ? Align::left : table.columns[i].align;
        set_lines(sheet, lines_between(row.cells[i], line, count),
                  {"", face, table.height, {anchor(cell, align), 0}, align, false}, top - row_pad);
        cell_left = cell.right;
    }
    sheet.line(LineRole::table, {left, bottom}, {left + table.width(), bottom});
    return bottom;
}

bool has_next(const TableLayout& table, std::size_t row) {
    return row + 1 < table.rows.size();
}

// A heading needs the row after it too.
double needed(const TableLayout& table, std::size_t row) {
    const double own = table.row_height(table.rows[row].lines());
    if (!table.rows[row].heading || !has_next(table, row)) return own;
    return own + table.row_height(table.rows[row + 1].lines());
}

std::size_t lines_in(const TableLayout& table, double height) {
    std::size_t lines = 0;
    while (table.row_height(lines + 1) <= height + slack) ++lines;
    return lines;
}

}  // namespace

std::size_t TableLayout::SetRow::lines() const {
    std::size_t most = 1;
    for (const auto& cell : cells) most = std::max(most, cell.size());
    return most;
}

double TableLayout::width() const {
    return sum(widths);
}

double TableLayout::row_height(std::size_t lines) const {
    return block_height(lines, height) + 2 * row_pad;
}

TableLayout lay_out_table(const Table& table, double width, const Fonts& fonts) {
    TableLayout layout;
    layout.columns = table.columns;
    layout.height = table.height;
    std::vector<Need> needs = needs_of(table, layout.height, true, fonts);
    if (total_least(needs) > width) needs = needs_of(table, layout.height, false, fonts);
    if (total_least(needs) > width) {
        const double pads = 2 * side_pad * static_cast<double>(needs.size());
        layout.height *= (width - pads) / (total_least(needs) - pads);
        needs = needs_of(table, layout.height, false, fonts);
    }
    layout.widths = share_out(needs, width);
    std::vector<std::string> titles;
    for (const Column& column : table.columns) titles.push_back(column.title);
    layout.titles = set_cells(titles, FontFace::bold, layout, fonts);
    for (const Row& row : table.rows) {
        layout.rows.push_back(row.heading ? set_heading(row.cells[0], layout, fonts)
                                          : set_cells(row.cells, FontFace::regular, layout, fonts));
    }
    return layout;
}

double height_from(const TableLayout& table, TableCursor from) {
    double height = table.row_height(table.titles.lines());
    for (std::size_t row = from.row; row < table.rows.size(); ++row) {
        const std::size_t done = row == from.row ? from.line : 0;
        height += table.row_height(table.rows[row].lines() - done);
    }
    return height;
}

TableCursor draw_table(Sheet& sheet, const TableLayout& table, TableCursor from, const Rect& room) {
    double top =
        draw_row(sheet, table, table.titles, 0, table.titles.lines(), room.left, room.top, FontFace::bold);
    sheet.line(LineRole::visible, {room.left, top}, {room.left + table.width(), top});
    TableCursor at = from;
    for (bool fresh = true; at.row < table.rows.size(); fresh = false) {
        const TableLayout::SetRow& row = table.rows[at.row];
        const std::size_t rest = row.lines() - at.line;
        const double room_left = top - room.bottom;
        if (!fresh && std::max(needed(table, at.row), table.row_height(rest)) > room_left + slack) break;
        const std::size_t count = std::min(rest, std::max<std::size_t>(1, lines_in(table, room_left)));
        const FontFace face = row.heading ? FontFace::bold : FontFace::regular;
        top = draw_row(sheet, table, row, at.line, count, room.left, top, face);
        at.line += count;
        if (count < rest) break;
        ++at.row;
        at.line = 0;
    }
    at.bottom = top;
    return at;
}

}  // namespace rodwright::drawing
