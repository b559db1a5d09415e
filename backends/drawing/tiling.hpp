// A drawing at full size, cut over as many sheets as it takes.
//
// The drawing is a display list in millimetres of the wood; its `frame` is around all that it shows. Each
// tile overlaps its neighbours, and crosses in the overlap, at the same points of the drawing on both, say
// how they are laid on one another.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/fonts.hpp"
#include "backends/drawing/sheet.hpp"
#include "compiler/quantity/format.hpp"

namespace rodwright::drawing {

inline constexpr double tile_overlap = 10;  // mm

class Tiling {
  public:
    // As few tiles as it takes, all of one size, none larger than `width` x `height` (each more than the
    // overlap).
    Tiling(const Sheet& drawing, double width, double height, const Fonts& fonts);

    std::size_t columns() const { return columns_; }
    std::size_t rows() const { return rows_; }
    std::size_t count() const { return columns_ * rows_; }
    // In the drawing's millimetres; column 0 is on the left, row 0 at the top.
    Rect tile(std::size_t column, std::size_t row) const;
    // Two in every stretch of overlap, near its ends, off the texts of the drawing where there is room.
    const std::vector<Point>& registration() const { return registration_; }

  private:
    void add_registration(Point from, Point to, const std::vector<Rect>& texts);

    Rect drawing_;
    std::size_t columns_ = 1;
    std::size_t rows_ = 1;
    double width_ = 0;  // of a tile
    double height_ = 0;
    std::vector<Point> registration_;
};

// "A1": the columns are letters from the left, the rows numbers from the top.
std::string tile_name(std::size_t column, std::size_t row);

// What of the drawing lies in the tile, and its registration crosses, the tile's lower left corner at `at`. A
// text that lies whole in some tile is on no other.
void draw_tile(Sheet& sheet, const Sheet& drawing, const Tiling& tiling, std::size_t column, std::size_t row,
               Point at, const Fonts& fonts);

// All tiles, this one filled, at the right side of the box; on the left of them what is cut up, and this
// tile's name: "C rail, tile B1".
void draw_tile_map(Sheet& sheet, const Tiling& tiling, std::size_t column, std::size_t row,
                   const std::string& drawing, const Rect& box, const Fonts& fonts);

// 100 mm or 4 in, across and upright, to prove the printer both ways. They meet in a corner over two lines of
// text; `at` is the lower left of all of it.
inline constexpr double scale_bars_below = 12;  // what the bar across and its texts take
inline constexpr double scale_bars_left = 7;    // what the upright bar and its text take
double scale_bar_length(LengthUnit unit);
void draw_scale_bars(Sheet& sheet, Point at, LengthUnit unit);

}  // namespace rodwright::drawing
