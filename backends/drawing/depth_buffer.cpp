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

// A triangle in the plane of the view; weights of its corners at a point say what is seen there.
struct Flat {
    std::array<Point3, 3> corners;
    double area = 0;

    explicit Flat(std::array<Point3, 3> seen) : corners(seen), area(edge(0, corners[2])) {}
    // Twice the signed area of corner i, corner i + 1 and the point.
    double edge(std::size_t i, const Point3& p) const {
        const Point3& a = corners[i];
        const Point3& b = corners[(i + 1) % 3];
        return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
    }
    // Outside: a weight below zero.
    Point3 weights(const Point3& p) const {
        return {edge(1, p) / area, edge(2, p) / area, edge(0, p) / area};
    }
};

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
PixelRange narrowed(const Flat& flat, const PixelGrid& grid, std::size_t row, const PixelRange& columns) {
    const Point first = grid.centre(row, columns.first);
    const Point last = grid.centre(row, columns.end - 1);
    const Point3 at_first = flat.weights({first.x, first.y, 0});
    const Point3 at_last = flat.weights({last.x, last.y, 0});
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

class Filler {
  public:
    Filler(const PixelGrid& grid, std::vector<Hit>& hits) : grid_(grid), hits_(hits) {}

    void fill(const ShadedPart& part, const Triangle& triangle, const Flat& flat) {
        const auto [left, right] = extent(flat, 0);
        const auto [bottom, top] = extent(flat, 1);
        const PixelRange columns =
            pixels_between(left - grid_.window.left, right - grid_.window.left, grid_.pixel, grid_.columns);
        const PixelRange rows =
            pixels_between(grid_.window.top - top, grid_.window.top - bottom, grid_.pixel, grid_.rows);
        if (columns.first >= columns.end) return;
        for (std::size_t row = rows.first; row < rows.end; ++row) {
            const PixelRange inside = narrowed(flat, grid_, row, columns);
            for (std::size_t column = inside.first; column < inside.end; ++column) {
                try_pixel(part, triangle, flat, row, column);
            }
        }
    }

  private:
    static std::pair<double, double> extent(const Flat& flat, std::size_t axis) {
        return std::minmax({flat.corners[0][axis], flat.corners[1][axis], flat.corners[2][axis]});
    }

    void try_pixel(const ShadedPart& part, const Triangle& triangle, const Flat& flat, std::size_t row,
                   std::size_t column) {
        const Point at = grid_.centre(row, column);
        const Point3 w = flat.weights({at.x, at.y, 0});
        if (w[0] < edge_slack || w[1] < edge_slack || w[2] < edge_slack) return;
        const double depth =
            w[0] * flat.corners[0][2] + w[1] * flat.corners[1][2] + w[2] * flat.corners[2][2];
        Hit& hit = hits_[grid_.index(row, column)];
        // Faces that lie in one plane: the first stays, whatever the last bits say.
        constexpr double nearer_by = 1e-6;
        if (depth <= hit.depth + nearer_by) return;
        hit = {&part, &triangle, depth, own_point(triangle, w)};
    }

    static Point3 own_point(const Triangle& triangle, const Point3& w) {
        Point3 own{};
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (std::size_t i = 0; i < 3; ++i) own[axis] += w[i] * triangle.corners[i][axis];
        }
        return own;
    }

    const PixelGrid& grid_;
    std::vector<Hit>& hits_;
};

void fill_part(const ShadedPart& part, const ViewAxes& axes, Filler& filler) {
    for (const Triangle& triangle : *part.triangles) {
        if (dot(turned(part.pose, triangle.normal), axes.z) <= 0) continue;
        std::array<Point3, 3> seen;
        for (std::size_t i = 0; i < 3; ++i) seen[i] = axes.seen(posed(part.pose, triangle.corners[i]));
        const Flat flat(seen);
        constexpr double no_area = 1e-12;
        if (std::abs(flat.area) > no_area) filler.fill(part, triangle, flat);
    }
}

}  // namespace

Point3 ViewAxes::seen(const Point3& point) const {
    return {dot(point, x), dot(point, y), dot(point, z)};
}

ViewAxes axes_of(const View& view) {
    const Point3 z = unit(view.towards);
    const Point3 x = unit(cross(view.up, z));
    return {x, cross(z, x), z};
}

Point3 turned(const Pose& pose, const Point3& direction) {
    Point3 out{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        for (std::size_t i = 0; i < 3; ++i) out[axis] += pose.columns[i][axis] * direction[i];
    }
    return out;
}

Point3 posed(const Pose& pose, const Point3& point) {
    Point3 out = turned(pose, point);
    for (std::size_t axis = 0; axis < 3; ++axis) out[axis] += pose.move[axis];
    return out;
}

std::vector<Hit> nearest_hits(const std::vector<ShadedPart>& parts, const ViewAxes& axes,
                              const PixelGrid& grid) {
    std::vector<Hit> hits(grid.rows * grid.columns);
    Filler filler(grid, hits);
    for (const ShadedPart& part : parts) fill_part(part, axes, filler);
    return hits;
}

}  // namespace rodwright::drawing
