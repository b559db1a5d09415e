#include "backends/drawing/ink.hpp"

#include <algorithm>

#include "backends/drawing/curve.hpp"
#include "backends/drawing/seen.hpp"

namespace rodwright::drawing {

// Liang and Barsky's test.
bool crosses(Point a, Point b, const Rect& box) {
    double from = 0;
    double to = 1;
    const auto clip = [&](double start, double way, double low, double high) {
        if (way == 0) return start > low && start < high;
        const double first = (low - start) / way;
        const double second = (high - start) / way;
        from = std::max(from, std::min(first, second));
        to = std::min(to, std::max(first, second));
        return from < to;
    };
    return clip(a.x, b.x - a.x, box.left, box.right) && clip(a.y, b.y - a.y, box.bottom, box.top);
}

namespace {

bool crosses(const std::vector<Point>& points, bool closed, const Rect& box) {
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (crosses(points[i - 1], points[i], box)) return true;
    }
    return closed && crosses(points.back(), points.front(), box);
}

bool inside(const std::vector<Point>& outline, Point at) {
    bool odd = false;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point& a = outline[i];
        const Point& b = outline[(i + 1) % outline.size()];
        if ((a.y > at.y) == (b.y > at.y)) continue;
        if (at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x)) odd = !odd;
    }
    return odd;
}

}  // namespace

bool inks(const Item& item, const Rect& box) {
    if (const auto* arc = std::get_if<Arc>(&item)) return crosses(points_along(item), arc->whole(), box);
    if (const auto* stroke = std::get_if<Stroke>(&item))
        return stroke->points.size() > 1 && crosses(points_along(item), stroke->closed, box);
    if (const auto* fill = std::get_if<Fill>(&item))
        return crosses(fill->points, true, box) || inside(fill->points, box.centre());
    return std::holds_alternative<Disc>(item);
}

Paper::Paper(const Sheet& sheet, const Fonts& fonts)
    : items_(sheet.items), boxes_(seen_boxes(sheet.items, fonts)) {}

bool Paper::is_free(const Rect& box) const {
    for (std::size_t i = 0; i < items_.size(); ++i) {
        if (!boxes_[i] || !boxes_[i]->grown(1e-5).overlaps(box)) continue;
        if (std::holds_alternative<Text>(items_[i]) || inks(items_[i], box)) return false;
    }
    return true;
}

std::optional<int> Paper::crossings(Point from, Point to) const {
    constexpr double clear = 0.3;  // mm
    int count = 0;
    for (std::size_t i = 0; i < items_.size(); ++i) {
        if (!boxes_[i] || !crosses(from, to, boxes_[i]->grown(clear))) continue;
        if (std::holds_alternative<Text>(items_[i])) return std::nullopt;
        const auto* stroke = std::get_if<Stroke>(&items_[i]);
        if (stroke != nullptr && stroke->role == LineRole::dimension) ++count;
    }
    return count;
}

}  // namespace rodwright::drawing
