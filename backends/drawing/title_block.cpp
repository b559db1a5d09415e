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
};

void draw_field(Sheet& sheet, const Rect& cell, const Field& field, double height, FontFace face,
                const Fonts& fonts) {
    const double width = cell.width() - 2 * pad;
    sheet.text(fitted({field.label,
                       FontFace::regular,
                       label_height,
                       {cell.left + pad, cell.top - pad / 2 - label_height * reach_above},
                       Align::left,
                       false},
                      width, fonts));
    sheet.text(fitted({field.value,
                       face,
                       height,
                       {cell.left + pad, cell.bottom + pad / 2 + height * reach_below},
                       Align::left,
                       false},
                      width, fonts));
}

// A row of fields beside one another, their widths in parts of the row's.
void draw_row(Sheet& sheet, const Rect& row, const std::vector<std::pair<Field, double>>& fields,
              const Fonts& fonts) {
    double left = row.left;
    for (const auto& [field, part] : fields) {
        const Rect cell{left, row.bottom, left + part * row.width(), row.top};
        if (left > row.left) sheet.line(LineRole::table, {left, row.bottom}, {left, row.top});
        draw_field(sheet, cell, field, value_height, FontFace::regular, fonts);
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
    const double split = box.left + 0.5 * box.width();
    sheet.line(LineRole::table, {split, middle}, {split, box.top});
    draw_field(sheet, {box.left, middle, split, box.top}, {"title", block.title}, 3.5, FontFace::bold, fonts);
    draw_field(sheet, {split, middle, symbol_left, box.top}, {"this sheet", block.subject}, 3,
               FontFace::regular, fonts);
    const std::string number = fmt::format("{} of {}", block.sheet, block.sheets);
    std::vector<std::pair<Field, double>> fields = {{{"sheet", number}, 0.16},
                                                    {{"units", block.units}, 0.34}};
    fields.push_back({{"scale", block.scale.empty() ? "none" : block.scale}, 0.14});
    fields.push_back({{"paper", block.format}, 0.14});
    fields.push_back({{"date", block.date.empty() ? "-" : block.date}, 0.22});
    draw_row(sheet, {box.left, box.bottom, symbol_left, middle}, fields, fonts);
    if (!block.projection) return;
    sheet.line(LineRole::table, {symbol_left, box.bottom}, {symbol_left, box.top});
    draw_projection_symbol(sheet, *block.projection, {(symbol_left + box.right) / 2, middle}, 8);
}

std::string date_text(const std::optional<std::chrono::sys_seconds>& time) {
    return time ? fmt::format("{:%Y-%m-%d}", *time) : "";
}

}  // namespace rodwright::drawing
