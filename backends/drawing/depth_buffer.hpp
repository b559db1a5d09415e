// Triangles into pixels, the nearest kept; internal to shaded.cpp.
#pragma once

#include <limits>

#include "backends/drawing/shaded.hpp"

namespace rodwright::drawing {

// A view's plane and depth as numbers: x right, y up, z towards the viewer, each of length 1.
struct ViewAxes {
    Point3 x{};
    Point3 y{};
    Point3 z{};
    Point3 seen(const Point3& point) const;
};
ViewAxes axes_of(const View& view);

Point3 posed(const Pose& pose, const Point3& point);
Point3 turned(const Pose& pose, const Point3& direction);

// What the nearest triangle at a pixel is.
struct Hit {
    const ShadedPart* part = nullptr;
    const Triangle* triangle = nullptr;
    double depth = -std::numeric_limits<double>::infinity();
    Point3 own{};  // the point in the solid's own frame
};

std::vector<Hit> nearest_hits(const std::vector<ShadedPart>& parts, const ViewAxes& axes,
                              const PixelGrid& grid);

}  // namespace rodwright::drawing
