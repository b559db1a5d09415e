#include "backends/drawing/broken_edge.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>

#include "backends/drawing/depth_buffer.hpp"

namespace rodwright::drawing {

namespace {

constexpr double same_plane = 1e-4;  // mm

// A corner of a mesh as a key: neighbouring triangles have it to the last bits alike or nearly so.
using Corner = std::array<long long, 3>;

Corner corner_of(const Point3& point) {
    constexpr double grid = 1e-4;  // mm
    Corner corner{};
    for (std::size_t i = 0; i < 3; ++i) corner[i] = std::llround(point[i] / grid);
    return corner;
}

// Which side of the box all three points lie in, 0 to 5; 6 for none.
std::size_t side_of(const std::array<Point3, 3>& corners, const Bounds& box) {
    for (std::size_t side = 0; side < 6; ++side) {
        const std::size_t axis = side / 2;
        const double place = side % 2 == 0 ? box.low[axis] : box.high[axis];
        if (std::all_of(corners.begin(), corners.end(),
                        [&](const Point3& corner) { return std::abs(corner[axis] - place) < same_plane; }))
            return side;
    }
    return 6;
}

double distance(Point at, const Segment& segment) {
    const Point way = segment[1] - segment[0];
    const Point off = at - segment[0];
    const double square = way.x * way.x + way.y * way.y;
    const double part = square > 0 ? std::clamp((off.x * way.x + off.y * way.y) / square, 0.0, 1.0) : 0;
    return std::hypot(off.x - way.x * part, off.y - way.y * part);
}

}  // namespace

std::vector<Segment3> broken_edges(const std::vector<Triangle>& triangles, const Pose& pose,
                                   const Bounds& box) {
    struct Use {
        int count = 0;
        Segment3 segment{};
    };
    std::map<std::tuple<std::size_t, Corner, Corner>, Use> uses;  // by side and ends
    for (const Triangle& triangle : triangles) {
        std::array<Point3, 3> corners;
        for (std::size_t i = 0; i < 3; ++i) corners[i] = posed(pose, triangle.corners[i]);
        const std::size_t side = side_of(corners, box);
        if (side == 6) continue;
        for (std::size_t i = 0; i < 3; ++i) {
            const Point3& a = corners[i];
            const Point3& b = corners[(i + 1) % 3];
            const Corner from = corner_of(a);
            const Corner to = corner_of(b);
            Use& use = uses[{side, std::min(from, to), std::max(from, to)}];
            ++use.count;
            use.segment = {a, b};
        }
    }
    std::vector<Segment3> borders;
    for (const auto& [key, use] : uses) {
        if (use.count == 1) borders.push_back(use.segment);
    }
    return borders;
}

bool runs_along(const ViewLine& line, const std::vector<Segment>& edges) {
    constexpr double slack = 0.15;  // mm: a mesh's chords leave its arcs by as much
    std::vector<PaperPoint> points = line.points;
    if (line.shape == LineShape::line)
        points.push_back({(points[0][0] + points[1][0]) / 2, (points[0][1] + points[1][1]) / 2});
    return !edges.empty() && std::all_of(points.begin(), points.end(), [&](const PaperPoint& point) {
        return std::any_of(edges.begin(), edges.end(), [&](const Segment& edge) {
            return distance({point[0], point[1]}, edge) < slack;
        });
    });
}

Freehand freehand(Point from, Point to) {
    constexpr double wave = 7;       // mm
    constexpr double swing = 0.5;    // mm
    constexpr double spacing = 0.5;  // mm
    const Point way = to - from;
    const double length = std::hypot(way.x, way.y);
    if (length < wave / 2) return {{from, to}, {from, to}};
    const Point left = Point{-way.y, way.x} * (1 / length);
    const double waves = std::max(1.0, std::round(length / wave));
    const int count = std::max(2, static_cast<int>(length / spacing));
    Freehand line;
    for (int i = 0; i <= count; ++i) {
        const double part = static_cast<double>(i) / count;
        const double angle = 2 * std::numbers::pi * waves * part;
        // Waves of which none is quite like the one before.
        const double off = (1 - std::cos(angle)) * (0.75 + 0.25 * std::sin(0.37 * angle));
        line.straight.push_back(from + way * part);
        line.drawn.push_back(line.straight.back() + left * (swing * off));
    }
    return line;
}

}  // namespace rodwright::drawing
