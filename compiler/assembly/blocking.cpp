#include "compiler/assembly/blocking.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rodwright {

namespace {

constexpr double slack = 1e-3;    // mm
constexpr double upright = 1e-6;  // of a unit normal: less is the side of something that slides past

struct Range {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();

    void include(double value) {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    bool overlaps(const Range& other) const { return low + slack < other.high && other.low + slack < high; }
};

struct Flat {
    double u = 0;
    double v = 0;
};

// A triangle seen along the axis: where it is, and its height over there.
struct Shadow {
    std::array<Flat, 3> corners;
    Range u, v, height;
    double base = 0;  // height = base + along_u u + along_v v
    double along_u = 0;
    double along_v = 0;

    double at(Flat point) const { return base + along_u * point.u + along_v * point.v; }
};

// What of a part begins, and what ends, for someone who comes up the axis.
struct Seen {
    std::vector<Shadow> begins;
    std::vector<Shadow> ends;
    Range u, v, height;
};

Shadow shadow_of(const Triangle& triangle, std::size_t axis) {
    const std::size_t u = (axis + 1) % 3;
    const std::size_t v = (axis + 2) % 3;
    Shadow shadow;
    for (std::size_t i = 0; i < 3; ++i) {
        const Point3& corner = triangle.corners[i];
        shadow.corners[i] = {corner[u], corner[v]};
        shadow.u.include(corner[u]);
        shadow.v.include(corner[v]);
        shadow.height.include(corner[axis]);
    }
    shadow.along_u = -triangle.normal[u] / triangle.normal[axis];
    shadow.along_v = -triangle.normal[v] / triangle.normal[axis];
    const Point3& corner = triangle.corners[0];
    shadow.base = corner[axis] - shadow.along_u * corner[u] - shadow.along_v * corner[v];
    return shadow;
}

Seen seen_along(const Mesh& mesh, std::size_t axis) {
    Seen seen;
    for (const Triangle& triangle : mesh) {
        if (std::abs(triangle.normal[axis]) < upright) continue;
        Shadow shadow = shadow_of(triangle, axis);
        for (const Flat& corner : shadow.corners) {
            seen.u.include(corner.u);
            seen.v.include(corner.v);
        }
        seen.height.include(shadow.height.low);
        seen.height.include(shadow.height.high);
        (triangle.normal[axis] < 0 ? seen.begins : seen.ends).push_back(shadow);
    }
    return seen;
}

double side(Flat from, Flat to, Flat point) {
    return (to.u - from.u) * (point.v - from.v) - (to.v - from.v) * (point.u - from.u);
}

using Polygon = std::vector<Flat>;

// What of a convex polygon is left of a line, or on it.
Polygon left_of(const Polygon& polygon, Flat from, Flat to) {
    Polygon kept;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Flat a = polygon[i];
        const Flat b = polygon[(i + 1) % polygon.size()];
        const double at_a = side(from, to, a);
        const double at_b = side(from, to, b);
        if (at_a >= 0) kept.push_back(a);
        if ((at_a > 0 && at_b < 0) || (at_a < 0 && at_b > 0)) {
            const double part = at_a / (at_a - at_b);
            kept.push_back({a.u + (b.u - a.u) * part, a.v + (b.v - a.v) * part});
        }
    }
    return kept;
}

Polygon shared(const Shadow& a, const Shadow& b) {
    Polygon polygon(a.corners.begin(), a.corners.end());
    std::array<Flat, 3> cutter = b.corners;
    if (side(cutter[0], cutter[1], cutter[2]) < 0) std::swap(cutter[1], cutter[2]);
    for (std::size_t i = 0; i < 3 && !polygon.empty(); ++i)
        polygon = left_of(polygon, cutter[i], cutter[(i + 1) % 3]);
    return polygon;
}

bool is_sliver(const Polygon& polygon) {
    if (polygon.size() < 3) return true;
    double twice_area = 0;
    double round = 0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Flat a = polygon[i];
        const Flat b = polygon[(i + 1) % polygon.size()];
        twice_area += a.u * b.v - a.v * b.u;
        round += std::hypot(b.u - a.u, b.v - a.v);
    }
    return std::abs(twice_area) <= slack * round;
}

// Whether something begins under what ends, anywhere over the polygon but at its very rim.
bool begins_under(const Shadow& begin, const Shadow& end, const Polygon& polygon) {
    Flat middle;
    for (const Flat& point : polygon) {
        middle.u += point.u / static_cast<double>(polygon.size());
        middle.v += point.v / static_cast<double>(polygon.size());
    }
    return std::ranges::any_of(polygon, [&](Flat point) {
        constexpr double inwards = 0.01;
        const Flat inside{point.u + (middle.u - point.u) * inwards, point.v + (middle.v - point.v) * inwards};
        return end.at(inside) > begin.at(inside) + slack;
    });
}

// Going up, the mover meets the other where it begins lower than the other ends: right above the beginning it
// is solid, and so is the other right below its end.
bool meets(const Seen& mover, const Seen& other) {
    if (!mover.u.overlaps(other.u) || !mover.v.overlaps(other.v)) return false;
    if (other.height.high < mover.height.low + slack) return false;
    for (const Shadow& begin : mover.begins) {
        if (!begin.u.overlaps(other.u) || !begin.v.overlaps(other.v)) continue;
        if (other.height.high < begin.height.low + slack) continue;
        for (const Shadow& end : other.ends) {
            if (end.height.high < begin.height.low + slack || !begin.u.overlaps(end.u) ||
                !begin.v.overlaps(end.v)) {
                continue;
            }
            const Polygon over = shared(begin, end);
            if (!is_sliver(over) && begins_under(begin, end, over)) return true;
        }
    }
    return false;
}

}  // namespace

Blocking::Blocking(const std::vector<Mesh>& parts) : count_(parts.size()) {
    for (std::size_t axis = 0; axis < upwards_.size(); ++axis) {
        std::vector<Seen> seen;
        for (const Mesh& mesh : parts) seen.push_back(seen_along(mesh, axis));
        upwards_[axis].assign(count_ * count_, false);
        for (std::size_t mover = 0; mover < count_; ++mover) {
            for (std::size_t other = 0; other < count_; ++other) {
                if (mover != other)
                    upwards_[axis][mover * count_ + other] = rodwright::meets(seen[mover], seen[other]);
            }
        }
    }
}

}  // namespace rodwright
