#include "backends/drawing/sheet.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rodwright::drawing {

bool Rect::contains(const Rect& other, double slack) const {
    return other.left >= left - slack && other.right <= right + slack && other.bottom >= bottom - slack &&
           other.top <= top + slack;
}

bool Rect::overlaps(const Rect& other, double slack) const {
    return other.left < right - slack && other.right > left + slack && other.bottom < top - slack &&
           other.top > bottom + slack;
}

Rect around(const Rect& a, const Rect& b) {
    return {std::min(a.left, b.left), std::min(a.bottom, b.bottom), std::max(a.right, b.right),
            std::max(a.top, b.top)};
}

void Sheet::line(LineRole role, Point from, Point to) {
    items.emplace_back(Stroke{role, {from, to}, false});
}

void Sheet::polyline(LineRole role, std::vector<Point> points, bool closed) {
    items.emplace_back(Stroke{role, std::move(points), closed});
}

void Sheet::rectangle(LineRole role, const Rect& box) {
    polyline(role,
             {{box.left, box.bottom}, {box.right, box.bottom}, {box.right, box.top}, {box.left, box.top}},
             true);
}

void Sheet::circle(LineRole role, Point centre, double radius) {
    polyline(role, circle_points(centre, radius), true);
}

void Sheet::fill(Colour colour, std::vector<Point> points) {
    items.emplace_back(Fill{colour, std::move(points)});
}

void Sheet::text(Text text) {
    if (!text.text.empty()) items.emplace_back(std::move(text));
}

std::vector<Point> circle_points(Point centre, double radius) {
    // A chord's middle is at most 0.02 mm inside the circle.
    const double step = 2 * std::acos(1 - std::min(0.5, 0.02 / std::max(radius, 0.02)));
    const int count = std::clamp(static_cast<int>(std::ceil(2 * std::numbers::pi / step)), 8, 180);
    std::vector<Point> points;
    for (int i = 0; i < count; ++i) {
        const double angle = 2 * std::numbers::pi * i / count;
        points.push_back({centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)});
    }
    return points;
}

}  // namespace rodwright::drawing
