#include "compiler/check/fit/rays.hpp"

#include <algorithm>
#include <cmath>

namespace rodwright {

namespace {

constexpr double on_one_edge = 1e-7;  // mm

bool shows_in(const Triangle& triangle, std::size_t axis, const Bounds& window) {
    const auto& [a, b, c] = triangle.corners;
    for (std::size_t i = 0; i < 3; ++i) {
        if (i == axis) continue;
        if (std::max({a[i], b[i], c[i]}) < window.low[i] || std::min({a[i], b[i], c[i]}) > window.high[i])
            return false;
    }
    return true;
}

// Where a line along the axis through `point` meets the triangle; empty where it passes it by or lies in it.
std::optional<double> meeting(const Triangle& triangle, const Point3& point, std::size_t axis) {
    constexpr double upright = 1e-9;
    if (std::abs(triangle.normal[axis]) < upright) return std::nullopt;
    const std::size_t u = (axis + 1) % 3;
    const std::size_t v = (axis + 2) % 3;
    const auto& [a, b, c] = triangle.corners;
    const auto side = [&](const Point3& from, const Point3& to) {
        return (to[u] - from[u]) * (point[v] - from[v]) - (to[v] - from[v]) * (point[u] - from[u]);
    };
    const double ab = side(a, b);
    const double bc = side(b, c);
    const double ca = side(c, a);
    const bool within = (ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0);
    const double whole = ab + bc + ca;
    if (!within || whole == 0) return std::nullopt;
    return (bc * a[axis] + ca * b[axis] + ab * c[axis]) / whole;
}

}  // namespace

Rays::Rays(const Mesh& mesh, Direction way, const Bounds& window) : way_(way) {
    for (const Triangle& triangle : mesh) {
        if (shows_in(triangle, static_cast<std::size_t>(way.axis), window)) shown_.push_back(&triangle);
    }
}

std::optional<double> Rays::wood_ahead(const Point3& from) const {
    const auto axis = static_cast<std::size_t>(way_.axis);
    std::vector<double> crossings;
    for (const Triangle* triangle : shown_) {
        const std::optional<double> at = meeting(*triangle, from, axis);
        if (!at) continue;
        const double ahead = way_.positive ? *at - from[axis] : from[axis] - *at;
        if (ahead > 0) crossings.push_back(ahead);
    }
    std::ranges::sort(crossings);
    // Through the edge of two triangles, as where a pocket lies right over another of its size, the surface
    // is met twice at one place.
    const auto same_place = [](double a, double b) { return b - a < on_one_edge; };
    crossings.erase(std::unique(crossings.begin(), crossings.end(), same_place), crossings.end());
    return crossings.size() % 2 == 1 ? std::optional(crossings.front()) : std::nullopt;
}

}  // namespace rodwright
