// When something that stands on a level floor tips over. Plain statics: it does when the moment of what
// pushes it over an edge of its feet passes that of its own weight. Lengths in mm, forces in newtons, x to
// the right, y to the back.
#pragma once

#include <array>
#include <vector>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

using FloorPoint = std::array<double, 2>;

// The corners of the convex hull, counter-clockwise (Andrew 1979). One or two points where there is no area.
std::vector<FloorPoint> hull_of(std::vector<FloorPoint> points);

// An edge about which it can tip, and the way out over it, square to it, of length 1.
struct TipEdge {
    FloorPoint on{};
    FloorPoint outward{};

    // How far a point is inside of the edge.
    double inside(const FloorPoint& point) const;
};
// The edges of a hull; none where it has no area.
std::vector<TipEdge> edges_of(const std::vector<FloorPoint>& hull);

struct Standing {
    std::vector<TipEdge> edges;
    double weight = 0;  // N
    Point3 centre{};    // of gravity, height above the floor
};

// The least angle by which it has to lean before it falls by itself, degrees; below 0 where it does so at
// once.
double tip_angle(const Standing& standing);
// A weight that is put on, seen from above.
struct PutOn {
    double weight = 0;
    FloorPoint at{};
};

// The least level force that tips it, pushed that way (of length 1) at that height while the weight lies on
// it. Infinite where nothing does, 0 where the weight alone does.
double tip_force(const Standing& standing, const FloorPoint& way, double height, const PutOn& load = {});
// The least weight that tips it, put on at that point and that high. Infinite where nothing does. `lean` is
// by how much the floor leans it to the front already, degrees.
double tip_load(const Standing& standing, const FloorPoint& at, double height = 0, double lean = 0);

}  // namespace rodwright
