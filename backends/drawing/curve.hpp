// Curves as cubic Béziers, the one form that PDF and SVG share.
//
// Control points in a row: the first point on the curve, then for each piece two that it bends towards and
// the one it ends in (3n + 1 of them).
#pragma once

#include <vector>

#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

// Within 5e-6 of the radius: pieces of at most an eighth of a turn, their control points 4/3 tan(angle / 4)
// of the radius along the tangents.
std::vector<Point> bezier_of(const Arc& arc);

// Through all points, two or more, without a corner: at each the tangent of the parabola through it and its
// neighbours. `closed`: from the last on to the first.
std::vector<Point> bezier_through(const std::vector<Point>& points, bool closed);

// Points close enough together on the paper to stand for a stroke or an arc where lines are cut and compared.
std::vector<Point> points_along(const Item& line);

}  // namespace rodwright::drawing
