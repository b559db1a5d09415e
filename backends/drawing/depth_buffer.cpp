#include "backends/drawing/depth_buffer.hpp"

#include <algorithm>
#include <cmath>

namespace rodwright::drawing {

namespace {

Point3 cross(const Point3& a, const Point3& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

double dot(const Point3& a, const Point3& b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

Point3 unit(const Point3& a) {
    const double length = std::sqrt(dot(a, a));
    return {a[0] / length, a[1] / length, a[2] / length};
}

struct PixelRange {
    std::size_t first = 0;
    std::size_t end = 0;
};

// The pixels whose centres can lie between two distances from the grid's edge.
PixelRange pixels_between(double low, double high, double pixel, std::size_t count) {
    const double limit = static_cast<double>(count);
    const double first = std::clamp(std::floor(low / pixel), 0.0, limit);
    const double end = std::clamp(std::ceil(high / pixel) + 1, 0.0, limit);
    return {static_cast<std::size_t>(first), static_cast<std::size_t>(end)};
}

constexpr double edge_slack = -1e-9;  // a weight above it is inside

// The pixels of a row that can lie in the triangle: each weight changes evenly along the row. One more at
// either end, for rounding.
PixelRange narrowed(const SeenTriangle& flat, const PixelGrid& grid, std::size_t row,
                    const PixelRange& columns) {
    const Point first = grid.centre(row, columns.first);
    const Point last = grid.centre(row, columns.end - 1);
    const Point3 at_first = flat.weights(first);
    const Point3 at_last = flat.weights(last);
    const auto steps = static_cast<double>(columns.end - 1 - columns.first);
    double low = 0;
    double high = steps;
    for (std::size_t i = 0; i < 3; ++i) {
        const double way = at_last[i] - at_first[i];
        if (way == 0) continue;
        const double crossing = (edge_slack - at_first[i]) / way * steps;
        if (way > 0) low = std::max(low, std::min(crossing - 1, steps));
        if (way < 0) high = std::min(high, std::max(crossing + 1, 0.0));
    }
    if (low > high) return {};
    return {columns.first + static_cast<std::size_t>(std::floor(low)),
            columns.first + static_cast<std::size_t>(std::ceil(high)) + 1};
}

// How much of a point on the paper is one corner's, by the edge across from it.
double weight_of(const SeenTriangle& seen, std::size_t corner, Point at) {
    const Point3& a = seen.corners[(corner + 1) % 3];
    const Point3& b = seen.corners[(corner + 2) % 3];
    return ((b[0] - a[0]) * (at.y - a[1]) - (b[1] - a[1]) * (at.x - a[0])) / seen.area;
}

// Faces that lie in one plane: the first stays, whatever the last bits say.
void keep_nearer(const SeenTriangle& seen, Point at, Hit& nearest) {
    constexpr double nearer_by = 1e-6;
    Point3 w{};
    for (std::size_t corner = 0; corner < 3; ++corner) {
        w[corner] = weight_of(seen, corner, at);
        if (w[corner] < edge_slack) return;
    }
    const double depth = w[0] * seen.corners[0][2] + w[1] * seen.corners[1][2] + w[2] * seen.corners[2][2];
    if (depth > nearest.depth + nearer_by) nearest = seen.hit(w);
}

class TriangleFiller {
  public:
    TriangleFiller(const PixelGrid& grid, std::vector<Hit>& hits) : grid_(grid), hits_(hits) {}

    void fill(const SeenTriangle& seen) {
        const Rect extent = seen.extent();
        const PixelRange columns = pixels_between(
            extent.left - grid_.window.left, extent.right - grid_.window.left, grid_.pixel, grid_.columns);
        const PixelRange rows = pixels_between(grid_.window.top - extent.top,
                                               grid_.window.top - extent.bottom, grid_.pixel, grid_.rows);
        if (columns.first >= columns.end) return;
        for (std::size_t row = rows.first; row < rows.end; ++row) {
            const PixelRange inside = narrowed(seen, grid_, row, columns);
            for (std::size_t column = inside.first; column < inside.end; ++column) {
                keep_nearer(seen, grid_.centre(row, column), hits_[grid_.index(row, column)]);
            }
        }
    }

  private:
    const PixelGrid& grid_;
    std::vector<Hit>& hits_;
};

}  // namespace

Point3 ViewAxes::seen(const Point3& point) const {
    return {dot(point, x), dot(point, y), dot(point, z)};
}

ViewAxes axes_of(const View& view) {
    const Point3 z = unit(view.towards);
    const Point3 x = unit(cross(view.up, z));
    return {x, cross(z, x), z};
}

Point3 SeenTriangle::weights(Point at) const {
    return {weight_of(*this, 0, at), weight_of(*this, 1, at), weight_of(*this, 2, at)};
}

Hit SeenTriangle::hit(const Point3& w) const {
    Hit hit{part, triangle, w[0] * corners[0][2] + w[1] * corners[1][2] + w[2] * corners[2][2], {}};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        for (std::size_t i = 0; i < 3; ++i) hit.own[axis] += w[i] * triangle->corners[i][axis];
    }
    return hit;
}

Rect SeenTriangle::extent() const {
    const auto [left, right] = std::minmax({corners[0][0], corners[1][0], corners[2][0]});
    const auto [bottom, top] = std::minmax({corners[0][1], corners[1][1], corners[2][1]});
    return {left, bottom, right, top};
}

std::vector<SeenTriangle> seen_triangles(const std::vector<ShadedPart>& parts, const ViewAxes& axes) {
    std::vector<SeenTriangle> found;
    for (const ShadedPart& part : parts) {
        for (const Triangle& triangle : *part.triangles) {
            if (dot(turned(part.pose, triangle.normal), axes.z) <= 0) continue;
            SeenTriangle seen{&part, &triangle, {}, 0};
            for (std::size_t i = 0; i < 3; ++i)
                seen.corners[i] = axes.seen(posed(part.pose, triangle.corners[i]));
            const auto& c = seen.corners;
            seen.area = (c[1][0] - c[0][0]) * (c[2][1] - c[0][1]) - (c[1][1] - c[0][1]) * (c[2][0] - c[0][0]);
            constexpr double no_area = 1e-12;
            if (std::abs(seen.area) > no_area) found.push_back(seen);
        }
    }
    return found;
}

std::vector<Hit> nearest_hits(const std::vector<SeenTriangle>& triangles, const PixelGrid& grid) {
    std::vector<Hit> hits(grid.rows * grid.columns);
    TriangleFiller filler(grid, hits);
    for (const SeenTriangle& each : triangles) filler.fill(each);
    return hits;
}

namespace {

constexpr std::size_t squares_a_side = 48;

}  // namespace

Scene::Scene(const std::vector<ShadedPart>& parts, const View& from)
    : axes_(axes_of(from)),
      triangles_(seen_triangles(parts, axes_)),
      squares_(squares_a_side * squares_a_side) {
    if (triangles_.empty()) return;
    extent_ = triangles_.front().extent();
    for (const SeenTriangle& each : triangles_) extent_ = around(extent_, each.extent());
    for (std::size_t i = 0; i < triangles_.size(); ++i) {
        const Rect e = triangles_[i].extent();
        const std::size_t right = square_at(e.right, extent_.left, extent_.right);
        const std::size_t top = square_at(e.top, extent_.bottom, extent_.top);
        for (std::size_t y = square_at(e.bottom, extent_.bottom, extent_.top); y <= top; ++y) {
            for (std::size_t x = square_at(e.left, extent_.left, extent_.right); x <= right; ++x)
                squares_[y * squares_a_side + x].push_back(static_cast<std::uint32_t>(i));
        }
    }
}

std::size_t Scene::square_at(double along, double low, double high) const {
    const double part = (along - low) / std::max(high - low, 1e-9) * squares_a_side;
    return static_cast<std::size_t>(std::clamp(part, 0.0, squares_a_side - 1.0));
}

Hit Scene::at(Point point) const {
    Hit nearest;
    if (!extent_.grown(1e-9).contains({point.x, point.y, point.x, point.y})) return nearest;
    const std::size_t x = square_at(point.x, extent_.left, extent_.right);
    const std::size_t y = square_at(point.y, extent_.bottom, extent_.top);
    for (const std::uint32_t i : squares_[y * squares_a_side + x]) keep_nearer(triangles_[i], point, nearest);
    return nearest;
}

}  // namespace rodwright::drawing
