// Triangles as a view shows them, and which of them is nearest at a point of it.
#pragma once

#include <limits>

#include "backends/drawing/shaded.hpp"
#include "compiler/solid/pose.hpp"

namespace rodwright::drawing {

// A view's plane and depth as numbers: x right, y up, z towards the viewer, each of length 1.
struct ViewAxes {
    Point3 x{};
    Point3 y{};
    Point3 z{};
    Point3 seen(const Point3& point) const;
};
ViewAxes axes_of(const View& view);

// What the nearest triangle at a pixel is.
struct Hit {
    const ShadedPart* part = nullptr;
    const Triangle* triangle = nullptr;
    double depth = -std::numeric_limits<double>::infinity();
    Point3 own{};  // the point in the solid's own frame
};

// A triangle in the plane of the view; weights of its corners at a point say what is seen there.
struct SeenTriangle {
    const ShadedPart* part = nullptr;
    const Triangle* triangle = nullptr;
    std::array<Point3, 3> corners;  // x and y in the view's plane, z towards the viewer
    double area = 0;                // twice, signed

    // Outside: a weight below zero.
    Point3 weights(Point at) const;
    Hit hit(const Point3& weights) const;
    Rect extent() const;
};

// Those that face the viewer.
std::vector<SeenTriangle> seen_triangles(const std::vector<ShadedPart>& parts, const ViewAxes& axes);

// At each pixel of the grid.
std::vector<Hit> nearest_hits(const std::vector<SeenTriangle>& triangles, const PixelGrid& grid);

// For points here and there: triangles sorted into squares of the plane.
class Scene {
  public:
    // `parts` is kept by address.
    Scene(const std::vector<ShadedPart>& parts, const View& from);
    const ViewAxes& axes() const { return axes_; }
    // What is nearest there; no part where nothing is.
    Hit at(Point point) const;

  private:
    std::size_t square_at(double along, double low, double high) const;

    ViewAxes axes_;
    std::vector<SeenTriangle> triangles_;
    Rect extent_;
    std::vector<std::vector<std::uint32_t>> squares_;
};

}  // namespace rodwright::drawing
