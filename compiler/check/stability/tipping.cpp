#include "compiler/check/stability/tipping.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace rodwright {

namespace {

constexpr double nothing = std::numeric_limits<double>::infinity();

double turn(const FloorPoint& a, const FloorPoint& b, const FloorPoint& c) {
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

FloorPoint on_floor(const Point3& point) {
    return {point[0], point[1]};
}

// Half of the hull: the corners from the first point to the last that turn only to the left.
template <typename Points>
std::vector<FloorPoint> left_chain(const Points& points) {
    std::vector<FloorPoint> chain;
    for (const FloorPoint& point : points) {
        while (chain.size() >= 2 && turn(chain[chain.size() - 2], chain.back(), point) <= 0) chain.pop_back();
        chain.push_back(point);
    }
    return chain;
}

}  // namespace

std::vector<FloorPoint> hull_of(std::vector<FloorPoint> points) {
    std::ranges::sort(points);
    points.erase(std::unique(points.begin(), points.end()), points.end());
    if (points.size() < 3) return points;
    std::vector<FloorPoint> hull = left_chain(points);
    std::ranges::reverse(points);
    const std::vector<FloorPoint> back = left_chain(points);
    hull.pop_back();
    hull.insert(hull.end(), back.begin(), std::prev(back.end()));
    return hull;
}

double TipEdge::inside(const FloorPoint& point) const {
    return (on[0] - point[0]) * outward[0] + (on[1] - point[1]) * outward[1];
}

std::vector<TipEdge> edges_of(const std::vector<FloorPoint>& hull) {
    std::vector<TipEdge> edges;
    if (hull.size() < 3) return edges;
    for (std::size_t i = 0; i < hull.size(); ++i) {
        const FloorPoint& from = hull[i];
        const FloorPoint& to = hull[(i + 1) % hull.size()];
        const double length = std::hypot(to[0] - from[0], to[1] - from[1]);
        edges.push_back({from, {(to[1] - from[1]) / length, (from[0] - to[0]) / length}});
    }
    return edges;
}

double tip_angle(const Standing& standing) {
    double least = nothing;
    for (const TipEdge& edge : standing.edges)
        least = std::min(least, std::atan2(edge.inside(on_floor(standing.centre)), standing.centre[2]));
    return least * 180 / std::numbers::pi;
}

double tip_force(const Standing& standing, const FloorPoint& way, double height, const PutOn& load) {
    double least = nothing;
    for (const TipEdge& edge : standing.edges) {
        const double over = way[0] * edge.outward[0] + way[1] * edge.outward[1];
        const double holds =
            standing.weight * edge.inside(on_floor(standing.centre)) + load.weight * edge.inside(load.at);
        if (holds < 0) return 0;
        if (over > 0 && height > 0) least = std::min(least, holds / (over * height));
    }
    return least;
}

double tip_load(const Standing& standing, const FloorPoint& at, double height, double lean) {
    const double angle = lean * std::numbers::pi / 180;
    double least = nothing;
    for (const TipEdge& edge : standing.edges) {
        // What is high comes nearer to an edge at the front as it leans.
        const double forwards = std::max(0.0, -edge.outward[1]);
        const auto inside = [&](const FloorPoint& point, double above) {
            return edge.inside(point) * std::cos(angle) - above * std::sin(angle) * forwards;
        };
        const double beyond = -inside(at, height);
        if (beyond <= 0) continue;
        const double holds = standing.weight * inside(on_floor(standing.centre), standing.centre[2]);
        least = std::min(least, std::max(0.0, holds) / beyond);
    }
    return least;
}

}  // namespace rodwright
