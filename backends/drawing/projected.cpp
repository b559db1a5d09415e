#include "backends/drawing/projected.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace rodwright::drawing {

namespace {

constexpr double paper_tolerance = 0.02;  // mm on the paper, far below a line's width

struct Circle {
    Point centre;
    double radius = 0;
};

// Through three points; empty if they are as good as in line.
std::optional<Circle> circle_through(Point a, Point b, Point c) {
    const Point ab = b - a;
    const Point ac = c - a;
    const double twice_area = 2 * (ab.x * ac.y - ab.y * ac.x);
    const double ab2 = ab.x * ab.x + ab.y * ab.y;
    const double ac2 = ac.x * ac.x + ac.y * ac.y;
    if (std::abs(twice_area) < 1e-9 * (ab2 + ac2)) return std::nullopt;
    const Point offset{(ac.y * ab2 - ab.y * ac2) / twice_area, (ab.x * ac2 - ac.x * ab2) / twice_area};
    return Circle{a + offset, std::hypot(offset.x, offset.y)};
}

// From `from` by `sweep` radians, in equal pieces.
std::vector<Point> arc_points(const Circle& circle, double from, double sweep, double tolerance) {
    const double flat = std::min(1.0, tolerance / std::max(circle.radius, 1e-9));
    const double step = 2 * std::acos(1 - flat);
    const int count = std::clamp(static_cast<int>(std::ceil(std::abs(sweep) / step)), 2, 360);
    std::vector<Point> points;
    for (int i = 0; i <= count; ++i) {
        const double angle = from + sweep * i / count;
        points.push_back(circle.centre + Point{std::cos(angle), std::sin(angle)} * circle.radius);
    }
    return points;
}

double angle_at(const Circle& circle, Point point) {
    return std::atan2(point.y - circle.centre.y, point.x - circle.centre.x);
}

double positive_turn(double angle) {
    const double full = 2 * std::numbers::pi;
    return angle < 0 ? angle + full : angle;
}

Point point_of(const PaperPoint& point) {
    return {point[0], point[1]};
}

std::vector<Point> arc_of(const ViewLine& line, double tolerance) {
    if (line.closed) {
        return arc_points({point_of(line.centre), line.radius}, 0, 2 * std::numbers::pi, tolerance);
    }
    const Point start = point_of(line.points[0]);
    const Point middle = point_of(line.points[1]);
    const Point end = point_of(line.points[2]);
    const std::optional<Circle> circle = circle_through(start, middle, end);
    if (!circle) return {start, end};
    const double from = angle_at(*circle, start);
    const double to_middle = positive_turn(angle_at(*circle, middle) - from);
    const double to_end = positive_turn(angle_at(*circle, end) - from);
    // Counter-clockwise if the middle comes before the end that way round.
    const double sweep = to_middle <= to_end ? to_end : to_end - 2 * std::numbers::pi;
    return arc_points(*circle, from, sweep, tolerance);
}

std::optional<LineRole> role_of(const ViewLine& line) {
    if (line.line_class == LineClass::seam) return std::nullopt;
    if (line.line_class == LineClass::smooth) {
        return line.visible ? std::optional(LineRole::smooth) : std::nullopt;
    }
    return line.visible ? LineRole::visible : LineRole::hidden;
}

}  // namespace

std::vector<Point> points_of(const ViewLine& line, double tolerance) {
    const bool enough = line.closed || line.points.size() >= 3;
    if (line.shape == LineShape::arc && enough) return arc_of(line, tolerance);
    std::vector<Point> points;
    for (const PaperPoint& point : line.points) points.push_back(point_of(point));
    return points;
}

Projected projected(std::vector<ViewLine> lines) {
    Projected view;
    bool first = true;
    for (const ViewLine& line : lines) {
        for (const Point& point : points_of(line, 0.05)) {
            const Rect here{point.x, point.y, point.x, point.y};
            view.bounds = first ? here : around(view.bounds, here);
            first = false;
        }
    }
    view.lines = std::move(lines);
    return view;
}

Projected project(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids, const View& from,
                  bool with_hidden) {
    return projected(kernel.view(solids, from, with_hidden));
}

Rect ViewPlace::on_sheet(const Rect& model) const {
    const Point low = on_sheet(Point{model.left, model.bottom});
    const Point high = on_sheet(Point{model.right, model.top});
    return {low.x, low.y, high.x, high.y};
}

void draw_view(Sheet& sheet, const Projected& view, const ViewPlace& place) {
    for (const LineRole role : {LineRole::hidden, LineRole::smooth, LineRole::visible}) {
        for (const ViewLine& line : view.lines) {
            if (role_of(line) != role) continue;
            std::vector<Point> points = points_of(line, paper_tolerance / place.factor);
            for (Point& point : points) point = place.on_sheet(point);
            sheet.polyline(role, std::move(points));
        }
    }
}

}  // namespace rodwright::drawing
