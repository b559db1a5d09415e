// Edges of solids that a drawing cuts off: there the drawing ends and the wood goes on. They are drawn
// freehand (ISO 128-2, the continuous narrow freehand line; from memory), so that nobody takes them for ends.
#pragma once

#include <array>
#include <vector>

#include "backends/drawing/shaded.hpp"

namespace rodwright::drawing {

using Segment3 = std::array<Point3, 2>;
using Segment = std::array<Point, 2>;

// The borders of those faces of a solid, by its triangles, that lie in a side of the box that it was cut to.
// The box and the result are in the axes that the solid is placed in.
std::vector<Segment3> broken_edges(const std::vector<Triangle>& triangles, const Pose& pose,
                                   const Bounds& box);

// Whether the line of a view runs along these, given in the view's plane.
bool runs_along(const ViewLine& line, const std::vector<Segment>& edges);

// The straight way between two points of the sheet as a hand would draw it: now on it, now a millimetre left
// of it. `straight` are the points of the way beside them. Always the same for the same two.
struct Freehand {
    std::vector<Point> drawn;
    std::vector<Point> straight;
};
Freehand freehand(Point from, Point to);

}  // namespace rodwright::drawing
