// What a curve on the paper is, from points along it.
#include <algorithm>
#include <cmath>
#include <optional>

#include "compiler/solid/paper_lines.hpp"

namespace rodwright {

namespace {

constexpr int first_intervals = 64;
constexpr int halvings = 5;
constexpr double fit_tolerance = 1e-4;  // mm
constexpr double largest_radius = 1e5;  // mm: a circle as large as that is a line to the eye

double distance(PaperPoint a, PaperPoint b) {
    return std::hypot(a[0] - b[0], a[1] - b[1]);
}

// From a point to a piece of line, its ends included.
double distance(PaperPoint p, PaperPoint a, PaperPoint b) {
    const double dx = b[0] - a[0];
    const double dy = b[1] - a[1];
    const double square = dx * dx + dy * dy;
    const double along = square == 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square;
    const double at = std::clamp(along, 0.0, 1.0);
    return distance(p, {a[0] + at * dx, a[1] + at * dy});
}

void refine(const PaperCurve& curve, double from, double to, PaperPoint last, int depth,
            std::vector<PaperPoint>& points) {
    const double middle = (from + to) / 2;
    const PaperPoint at = curve(middle);
    if (depth > 0 && distance(at, points.back(), last) > paper::chord_tolerance) {
        refine(curve, from, middle, at, depth - 1, points);
        refine(curve, middle, to, last, depth - 1, points);
    } else {
        points.push_back(last);
    }
}

std::optional<std::vector<PaperPoint>> as_line(const std::vector<PaperPoint>& along) {
    const PaperPoint start = along.front();
    const auto nearer = [&](PaperPoint a, PaperPoint b) { return distance(start, a) < distance(start, b); };
    const PaperPoint far = *std::max_element(along.begin(), along.end(), nearer);
    const double length = distance(start, far);
    if (length < fit_tolerance) return std::vector{start, far};
    const PaperPoint unit = {(far[0] - start[0]) / length, (far[1] - start[1]) / length};
    double low = 0;
    for (const PaperPoint& p : along) {
        const double across = (p[0] - start[0]) * unit[1] - (p[1] - start[1]) * unit[0];
        if (std::abs(across) > fit_tolerance) return std::nullopt;
        low = std::min(low, (p[0] - start[0]) * unit[0] + (p[1] - start[1]) * unit[1]);
    }
    return std::vector{PaperPoint{start[0] + low * unit[0], start[1] + low * unit[1]}, far};
}

// Centre of the circle through three points: where the perpendicular bisectors cross.
std::optional<PaperPoint> centre_through(PaperPoint a, PaperPoint b, PaperPoint c) {
    const PaperPoint p = {b[0] - a[0], b[1] - a[1]};
    const PaperPoint q = {c[0] - a[0], c[1] - a[1]};
    const double twice = 2 * (p[0] * q[1] - p[1] * q[0]);
    if (std::abs(twice) < 1e-12) return std::nullopt;
    const double pp = p[0] * p[0] + p[1] * p[1];
    const double qq = q[0] * q[0] + q[1] * q[1];
    return PaperPoint{a[0] + (q[1] * pp - p[1] * qq) / twice, a[1] + (p[0] * qq - q[0] * pp) / twice};
}

bool set_arc(ViewLine& line, const std::vector<PaperPoint>& along) {
    const std::size_t last = along.size() - 1;
    if (last < 4) return false;
    const bool closed = distance(along.front(), along.back()) < fit_tolerance;
    const PaperPoint on = along[closed ? last / 3 : last / 2];
    const PaperPoint third = closed ? along[2 * last / 3] : along.back();
    const auto centre = centre_through(along.front(), on, third);
    if (!centre) return false;
    const double radius = distance(*centre, along.front());
    if (radius > largest_radius) return false;
    const auto off = [&](PaperPoint p) { return std::abs(distance(*centre, p) - radius) > fit_tolerance; };
    if (std::any_of(along.begin(), along.end(), off)) return false;
    line.shape = LineShape::arc;
    line.closed = closed;
    line.points = {along.front(), on, closed ? along.front() : along.back()};
    line.centre = *centre;
    line.radius = radius;
    return true;
}

}  // namespace

std::vector<PaperPoint> sample(const PaperCurve& curve, double from, double to) {
    std::vector<PaperPoint> points = {curve(from)};
    const double step = (to - from) / first_intervals;
    for (int i = 0; i < first_intervals; ++i) {
        const double end = i + 1 == first_intervals ? to : from + (i + 1) * step;
        refine(curve, from + i * step, end, curve(end), halvings, points);
    }
    return points;
}

void set_shape(ViewLine& line, std::vector<PaperPoint> along) {
    if (auto ends = as_line(along)) {
        line.shape = LineShape::line;
        line.points = std::move(*ends);
        return;
    }
    if (set_arc(line, along)) return;
    line.shape = LineShape::curve;
    line.closed = distance(along.front(), along.back()) < fit_tolerance;
    line.points = std::move(along);
}

}  // namespace rodwright
