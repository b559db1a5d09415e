// Where views stand to one another (ISO 5456-2), and the symbol that says so.
#pragma once

#include <cstdint>

#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

// Third angle: the view from above stands above the front view, the view from the right to its right. First
// angle: the view from above stands below, the view from the left to the right.
enum class ProjectionMethod : std::uint8_t { first_angle, third_angle };

// The truncated cone of ISO 5456-2 in two views, within a box of 2.2 to 1 with that height and centre.
void draw_projection_symbol(Sheet& sheet, ProjectionMethod method, Point centre, double height);

}  // namespace rodwright::drawing
