// Which part is seen where, in parallel projection: at each point the one that is nearest to the viewer, so
// parts that reach into one another come out right.
#pragma once

#include <cstdint>
#include <vector>

#include "backends/drawing/sheet.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::drawing {

struct ShadedPart {
    const std::vector<Triangle>* triangles = nullptr;  // in the solid's own frame, x along the grain
    Pose pose;
    std::uint32_t tag = 0;
    Colour colour;
};

inline constexpr std::uint32_t no_part = 0xffffffffU;

// Square pixels, rows from the top. `window` is the picture's place in the view's plane, model millimetres.
struct PixelGrid {
    Rect window;
    std::size_t columns = 0;
    std::size_t rows = 0;
    double pixel = 1;  // model millimetres across one

    std::size_t index(std::size_t row, std::size_t column) const { return row * columns + column; }
    Point centre(std::size_t row, std::size_t column) const;
};
// The grid over `window` with `pixels` along its longer side.
PixelGrid pixel_grid(const Rect& window, std::size_t pixels);

// Which part is seen at each pixel (no_part where none is), row by row.
std::vector<std::uint32_t> parts_seen(const std::vector<ShadedPart>& parts, const View& from,
                                      const PixelGrid& grid);

// The pixel of that part furthest from where it ends, as a point of the view's plane; the part is seen
// somewhere.
Point inmost_point(const std::vector<std::uint32_t>& seen, const PixelGrid& grid, std::uint32_t tag);

// "#c8b089"; a light wood where it is not written so.
Colour colour_of(const std::string& hex);

}  // namespace rodwright::drawing
