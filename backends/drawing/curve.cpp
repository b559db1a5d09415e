#include "backends/drawing/curve.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rodwright::drawing {

namespace {

// How fast the parabola through three points moves at the middle one, its parameter the length of chords.
Point speed_at(Point before, Point at, Point after) {
    const double first = distance(before, at);
    const double second = distance(at, after);
    if (first == 0 || second == 0) return (after - before) * (1 / std::max(first + second, 1e-12));
    const Point in = (at - before) * (1 / first);
    const Point out = (after - at) * (1 / second);
    return (in * second + out * first) * (1 / (first + second));
}

// The same at the first of the three.
Point speed_at_end(Point end, Point next, Point over_next) {
    const double length = distance(end, next);
    if (length == 0) return {};
    return (next - end) * (2 / length) - speed_at(end, next, over_next);
}

Point speed_of(const std::vector<Point>& points, std::size_t i, bool closed) {
    const std::size_t last = points.size() - 1;
    if (closed) {
        return speed_at(points[i == 0 ? last : i - 1], points[i], points[i == last ? 0 : i + 1]);
    }
    if (i > 0 && i < last) return speed_at(points[i - 1], points[i], points[i + 1]);
    if (points.size() == 2) return speed_at(points[0], points[0], points[1]);
    if (i == 0) return speed_at_end(points[0], points[1], points[2]);
    return speed_at_end(points[last], points[last - 1], points[last - 2]) * -1;
}

}  // namespace

std::vector<Point> bezier_of(const Arc& arc) {
    const double most = std::numbers::pi / 4;
    const int count = std::max(1, static_cast<int>(std::ceil(std::abs(arc.sweep) / most - 1e-9)));
    const double step = arc.sweep / count;
    const double reach = 4.0 / 3.0 * std::tan(step / 4) * arc.radius;
    const auto tangent = [](double angle) { return Point{-std::sin(angle), std::cos(angle)}; };
    std::vector<Point> controls = {arc.from()};
    for (int i = 0; i < count; ++i) {
        const double from = arc.start + step * i;
        const double to = arc.start + step * (i + 1);
        controls.push_back(arc.at(from) + tangent(from) * reach);
        controls.push_back(arc.at(to) - tangent(to) * reach);
        controls.push_back(arc.at(to));
    }
    return controls;
}

std::vector<Point> bezier_through(const std::vector<Point>& points, bool closed) {
    std::vector<Point> controls = {points.front()};
    const std::size_t pieces = closed ? points.size() : points.size() - 1;
    for (std::size_t i = 0; i < pieces; ++i) {
        const std::size_t next = (i + 1) % points.size();
        const double third = distance(points[i], points[next]) / 3;
        controls.push_back(points[i] + speed_of(points, i, closed) * third);
        controls.push_back(points[next] - speed_of(points, next, closed) * third);
        controls.push_back(points[next]);
    }
    return controls;
}

std::vector<Point> points_along(const Item& line) {
    if (const auto* stroke = std::get_if<Stroke>(&line)) return stroke->points;
    const Arc& arc = std::get<Arc>(line);
    const int count = std::clamp(static_cast<int>(std::abs(arc.sweep) * std::sqrt(arc.radius) * 6), 8, 180);
    std::vector<Point> points;
    for (int i = 0; i <= count; ++i) points.push_back(arc.at(arc.start + arc.sweep * i / count));
    return points;
}

}  // namespace rodwright::drawing
