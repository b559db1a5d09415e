#include "backends/drawing/tiling.hpp"

#include <algorithm>
#include <cmath>

#include "backends/drawing/seen.hpp"
#include "backends/drawing/text_layout.hpp"
#include "backends/drawing/text_run.hpp"

namespace rodwright::drawing {

namespace {

constexpr double cross_arm = 3.5;
constexpr double cross_radius = 1.8;
constexpr double cross_inset = 5;  // from the ends of a stretch of overlap

// How many pieces of at most `most` cover `length`, each overlapping the next.
std::size_t pieces(double length, double most) {
    const double step = most - tile_overlap;
    return static_cast<std::size_t>(std::max(1.0, std::ceil((length - tile_overlap) / step - 1e-9)));
}

double piece_size(double length, std::size_t count) {
    return (length + tile_overlap * static_cast<double>(count - 1)) / static_cast<double>(count);
}

void draw_cross(Sheet& sheet, Point at) {
    sheet.line(LineRole::dimension, at - Point{cross_arm, 0}, at + Point{cross_arm, 0});
    sheet.line(LineRole::dimension, at - Point{0, cross_arm}, at + Point{0, cross_arm});
    sheet.circle(LineRole::dimension, at, cross_radius);
}

std::vector<Rect> texts_in(const Sheet& drawing, const Fonts& fonts) {
    std::vector<Rect> texts;
    for (const Item& item : drawing.items) {
        if (const auto* text = std::get_if<Text>(&item)) texts.push_back(text_box(*text, fonts));
    }
    return texts;
}

// The first place on the way from an end of the overlap to its middle where a cross stands on no text; at the
// end if there is none.
Point free_place(Point end, Point middle, const std::vector<Rect>& texts) {
    constexpr double step = 2;
    const Point way = middle - end;
    const double length = std::hypot(way.x, way.y);
    const Point unit = way * (1 / length);
    for (double along = std::min(cross_inset, length); along < length; along += step) {
        const Point at = end + unit * along;
        const Rect cross = Rect{at.x, at.y, at.x, at.y}.grown(cross_arm + 0.5);
        const auto covers = [&](const Rect& text) { return text.overlaps(cross); };
        if (std::none_of(texts.begin(), texts.end(), covers)) return at;
    }
    return end + unit * std::min(cross_inset, length);
}

bool is_mark(const Item& item) {
    return std::holds_alternative<ClipStart>(item) || std::holds_alternative<ClipEnd>(item) ||
           std::holds_alternative<GroupStart>(item) || std::holds_alternative<GroupEnd>(item);
}

bool touches(const Rect& a, const Rect& b) {
    const Rect both = common(a, b);
    return both.right >= both.left && both.top >= both.bottom;
}

bool whole_in_some_tile(const Rect& box, const Tiling& tiling) {
    for (std::size_t column = 0; column < tiling.columns(); ++column) {
        for (std::size_t row = 0; row < tiling.rows(); ++row) {
            if (tiling.tile(column, row).contains(box)) return true;
        }
    }
    return false;
}

bool is_on(const Item& item, const Rect& box, const Rect& tile, const Tiling& tiling) {
    if (!touches(box, tile)) return false;
    if (!std::holds_alternative<Text>(item)) return true;
    return tile.contains(box) || !whole_in_some_tile(box, tiling);
}

}  // namespace

Tiling::Tiling(const Sheet& drawing, double width, double height, const Fonts& fonts)
    : drawing_(drawing.frame),
      columns_(pieces(drawing_.width(), width)),
      rows_(pieces(drawing_.height(), height)),
      width_(piece_size(drawing_.width(), columns_)),
      height_(piece_size(drawing_.height(), rows_)) {
    const std::vector<Rect> texts = texts_in(drawing, fonts);
    for (std::size_t row = 0; row < rows_; ++row) {
        for (std::size_t column = 0; column < columns_; ++column) {
            const Rect own = tile(column, row);
            const double right = own.right - tile_overlap / 2;
            const double bottom = own.bottom + tile_overlap / 2;
            if (column + 1 < columns_) add_registration({right, own.bottom}, {right, own.top}, texts);
            if (row + 1 < rows_) add_registration({own.left, bottom}, {own.right, bottom}, texts);
        }
    }
}

void Tiling::add_registration(Point from, Point to, const std::vector<Rect>& texts) {
    const Point middle = (from + to) * 0.5;
    registration_.push_back(free_place(from, middle, texts));
    registration_.push_back(free_place(to, middle, texts));
}

Rect Tiling::tile(std::size_t column, std::size_t row) const {
    const double left = drawing_.left + static_cast<double>(column) * (width_ - tile_overlap);
    const double top = drawing_.top - static_cast<double>(row) * (height_ - tile_overlap);
    return {left, top - height_, left + width_, top};
}

std::string tile_name(std::size_t column, std::size_t row) {
    std::string letters;
    for (std::size_t left = column + 1; left > 0; left = (left - 1) / 26)
        letters.insert(letters.begin(), static_cast<char>('A' + (left - 1) % 26));
    return letters + std::to_string(row + 1);
}

void draw_tile(Sheet& sheet, const Sheet& drawing, const Tiling& tiling, std::size_t column, std::size_t row,
               Point at, const Fonts& fonts) {
    const Rect tile = tiling.tile(column, row);
    const Point by = at - Point{tile.left, tile.bottom};
    const std::vector<std::optional<Rect>> seen = seen_boxes(drawing.items, fonts);
    sheet.items.emplace_back(ClipStart{moved(tile, by)});
    for (std::size_t i = 0; i < seen.size(); ++i) {
        const Item& item = drawing.items[i];
        if (is_mark(item) || (seen[i] && is_on(item, *seen[i], tile, tiling)))
            sheet.items.push_back(moved(item, by));
    }
    sheet.items.emplace_back(ClipEnd{});
    for (const Point& point : tiling.registration()) {
        if (tile.contains({point.x, point.y, point.x, point.y})) draw_cross(sheet, point + by);
    }
}

void draw_tile_map(Sheet& sheet, const Tiling& tiling, std::size_t column, std::size_t row,
                   const std::string& drawing, const Rect& box, const Fonts& fonts) {
    constexpr double name_height = 2.5;
    constexpr double most = 0.4;  // of the width for the map
    const double across = std::min(6.0, most * box.width() / static_cast<double>(tiling.columns()));
    const double down = std::min(4.0, box.height() / static_cast<double>(tiling.rows()));
    const double left = box.right - across * static_cast<double>(tiling.columns());
    for (std::size_t c = 0; c < tiling.columns(); ++c) {
        for (std::size_t r = 0; r < tiling.rows(); ++r) {
            const Point corner{left + across * static_cast<double>(c),
                               box.top - down * static_cast<double>(r + 1)};
            const Rect cell{corner.x, corner.y, corner.x + across, corner.y + down};
            if (c == column && r == row) {
                sheet.fill({60, 60, 60}, {{cell.left, cell.bottom},
                                          {cell.right, cell.bottom},
                                          {cell.right, cell.top},
                                          {cell.left, cell.top}});
            }
            sheet.rectangle(LineRole::dimension, cell);
        }
    }
    const Text name{drawing + ", tile " + tile_name(column, row), FontFace::bold, name_height,
                    Point{left - 2, box.top - name_height - 0.5}, Align::right,   false};
    sheet.text(fitted(name, left - 2 - box.left, fonts));
}

double scale_bar_length(LengthUnit unit) {
    return unit == LengthUnit::inch ? 4 * 25.4 : 100;
}

void draw_scale_bars(Sheet& sheet, Point at, LengthUnit unit) {
    constexpr double tick = 3;
    const bool inch = unit == LengthUnit::inch;
    const double length = scale_bar_length(unit);
    const int parts = inch ? 4 : 10;
    const Point zero = at + Point{scale_bars_left - tick - 0.4, scale_bars_below - tick - 1};
    const Point across{1, 0};
    const Point upright{0, 1};
    for (const auto& [along, aside] : {std::pair(across, upright), std::pair(upright, across)}) {
        sheet.line(LineRole::dimension, zero, zero + along * length);
        for (int i = 0; i <= parts; ++i) {
            const Point from = zero + along * (length * i / parts);
            const bool end = i == 0 || i == parts;
            sheet.line(LineRole::dimension, from, from + aside * (end ? tick : tick / 2));
        }
    }
    const std::string name = inch ? "4\"" : "100 mm";
    sheet.text({name + " each way: measure both before you use the template", FontFace::regular, 2.5,
                zero - Point{0, 4}, Align::left, false});
    sheet.text({"Print at 100 %, not fitted to the page", FontFace::regular, 2, zero - Point{0, 7.5},
                Align::left, false});
    sheet.text({name, FontFace::regular, 2.5, zero + Point{-0.8, length / 2}, Align::middle, true});
}

}  // namespace rodwright::drawing
