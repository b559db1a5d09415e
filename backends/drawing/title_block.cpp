#include "backends/drawing/title_block.hpp"

#include <fmt/chrono.h>

#include <algorithm>

namespace rodwright::drawing {

namespace {

constexpr double label_height = 1.8;  // the smallest of ISO 3098
constexpr double value_height = 2.5;
constexpr double pad = 1.5;

struct Field {
    std::string label;
    std::string value;
    double share = 1;  // of the row's width
    double height = value_height;
    FontFace face = FontFace::regular;
};

void draw_field(Sheet& sheet, const Rect& cell, const Field& field, const Fonts& fonts) {
    const double width = cell.width() - 2 * pad;
    sheet.text(fitted({field.label,
                       FontFace::regular,
                       label_height,
                       {cell.left + pad, cell.top - pad / 2 - label_height * reach_above},
                       Align::left,
                       false},
                      width, fonts));
    sheet.text(fitted({field.value,
                       field.face,
                       field.height,
                       {cell.left + pad, cell.bottom + pad / 2 + field.height * reach_below},
                       Align::left,
                       false},
                      width, fonts));
}

// Fields beside one another; those that have nothing to say leave their room to the others.
void draw_row(Sheet& sheet, const Rect& row, std::vector<Field> fields, const Fonts& fonts) {
    std::erase_if(fields, [](const Field& field) { return field.value.empty(); });
    double shares = 0;
    for (const Field& field : fields) shares += field.share;
    double left = row.left;
    for (const Field& field : fields) {
        const Rect cell{left, row.bottom, left + field.share / shares * row.width(), row.top};
        if (left > row.left) sheet.line(LineRole::table, {left, row.bottom}, {left, row.top});
        draw_field(sheet, cell, field, fonts);
        left = cell.right;
    }
}

}  // namespace

Rect title_block_box(const Rect& frame) {
    const double width = std::min(title_block_width, frame.width());
    return {frame.right - width, frame.bottom, frame.right, frame.bottom + title_block_height};
}

Rect drawing_room(const Rect& frame) {
    return {frame.left, frame.bottom + title_block_height, frame.right, frame.top};
}

void draw_title_block(Sheet& sheet, const TitleBlock& block, const Fonts& fonts) {
    const Rect box = title_block_box(sheet.frame);
    const double middle = box.bottom + box.height() / 2;
    const double symbol_left = box.right - (block.projection ? 22 : 0);
    sheet.polyline(LineRole::visible, {{box.right, box.top}, {box.left, box.top}, {box.left, box.bottom}});
    sheet.line(LineRole::table, {box.left, middle}, {symbol_left, middle});
    draw_row(sheet, {box.left, middle, symbol_left, box.top},
             {{"title", block.title, 0.4, 3.5, FontFace::bold},
              {"this sheet", block.subject, 0.36, 3},
              {"number", block.number, 0.14},
              {"revision", block.revision, 0.1}},
             fonts);
    draw_row(sheet, {box.left, box.bottom, symbol_left, middle},
             {{"sheet", fmt::format("{} of {}", block.sheet, block.sheets), 0.16},
              {"units", block.units, 0.34},
              {"scale", block.scale, 0.14},
              {"paper", block.format, 0.14},
              {"date", block.date, 0.22}},
             fonts);
    if (!block.projection) return;
    sheet.line(LineRole::table, {symbol_left, box.bottom}, {symbol_left, box.top});
    draw_projection_symbol(sheet, *block.projection, {(symbol_left + box.right) / 2, middle}, 8);
}

std::string date_text(const std::optional<std::chrono::sys_seconds>& time) {
    return time ? fmt::format("{:%Y-%m-%d}", *time) : "";
}

}  // namespace rodwright::drawing
