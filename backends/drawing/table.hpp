// Tables that go on from sheet to sheet. Columns are as wide as what stands in them; where that is too much,
// the cells wrap, and where even the longest words are too wide, the text is set smaller.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/text_layout.hpp"

namespace rodwright::drawing {

struct Column {
    std::string title;
    Align align = Align::left;
    bool whole = false;  // its cells stay on one line as long as the other columns have room to wrap
};

struct Row {
    std::vector<std::string> cells;  // one for each column; a heading has one, set bold across all of them
    bool heading = false;
};

struct Table {
    std::vector<Column> columns;
    std::vector<Row> rows;
    double height = 2.5;  // of the text
};

// A table set to a width: every cell in lines.
struct TableLayout {
    std::vector<Column> columns;
    std::vector<double> widths;
    double height = 0;  // of the text
    struct SetRow {
        std::vector<std::vector<std::string>> cells;  // lines of each
        bool heading = false;
        std::size_t lines() const;
    };
    std::vector<SetRow> rows;
    SetRow titles;

    double width() const;
    double row_height(std::size_t lines) const;
};
TableLayout lay_out_table(const Table& table, double width, const Fonts& fonts);

// Where the next sheet goes on, and how far down this one is used.
struct TableCursor {
    std::size_t row = 0;
    std::size_t line = 0;  // within a row that is taller than a sheet
    double bottom = 0;
};

// The height of the titles and of all rows from `from`.
double height_from(const TableLayout& table, TableCursor from);

// Draws titles and the rows from `from` that have room, at the least one line. A heading is not left alone at
// the foot. Done when the cursor's row is past the last.
TableCursor draw_table(Sheet& sheet, const TableLayout& table, TableCursor from, const Rect& room);

}  // namespace rodwright::drawing
