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

bool Arc::whole() const {
    return std::abs(sweep) > 2 * std::numbers::pi - 1e-9;
}

Point Arc::at(double angle) const {
    return centre + Point{std::cos(angle), std::sin(angle)} * radius;
}

Rect around(const Rect& a, const Rect& b) {
    return {std::min(a.left, b.left), std::min(a.bottom, b.bottom), std::max(a.right, b.right),
            std::max(a.top, b.top)};
}

Rect common(const Rect& a, const Rect& b) {
    return {std::max(a.left, b.left), std::max(a.bottom, b.bottom), std::min(a.right, b.right),
            std::min(a.top, b.top)};
}

Rect moved(const Rect& box, Point by) {
    return {box.left + by.x, box.bottom + by.y, box.right + by.x, box.top + by.y};
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
    items.emplace_back(Arc{role, centre, radius, 0, 2 * std::numbers::pi});
}

void Sheet::fill(Colour colour, std::vector<Point> points) {
    items.emplace_back(Fill{colour, std::move(points)});
}

void Sheet::text(Text text) {
    if (!text.text.empty()) items.emplace_back(std::move(text));
}

namespace {

Rect box_around(const std::vector<Point>& points) {
    Rect box{points[0].x, points[0].y, points[0].x, points[0].y};
    for (const Point& point : points) box = around(box, {point.x, point.y, point.x, point.y});
    return box;
}

// The ends, and the points right, above, left and below the centre that the arc passes.
Rect box_around(const Arc& arc) {
    std::vector<Point> points = {arc.from(), arc.to()};
    const double low = std::min(arc.start, arc.start + arc.sweep);
    const double high = std::max(arc.start, arc.start + arc.sweep);
    const double quarter = std::numbers::pi / 2;
    for (double angle = std::ceil(low / quarter) * quarter; angle <= high; angle += quarter)
        points.push_back(arc.at(angle));
    return box_around(points);
}

struct Mover {
    Point by;

    void operator()(std::vector<Point>& points) const {
        for (Point& point : points) point = point + by;
    }
    void operator()(Stroke& stroke) const { (*this)(stroke.points); }
    void operator()(Fill& fill) const { (*this)(fill.points); }
    void operator()(Arc& arc) const { arc.centre = arc.centre + by; }
    void operator()(Disc& disc) const { disc.centre = disc.centre + by; }
    void operator()(Text& text) const { text.at = text.at + by; }
    void operator()(Link& link) const { link.box = moved(link.box, by); }
    void operator()(ClipStart& clip) const { clip.box = moved(clip.box, by); }
    void operator()(GroupStart&) const {}
    void operator()(GroupEnd&) const {}
    void operator()(ClipEnd&) const {}
};

}  // namespace

Item moved(Item item, Point by) {
    std::visit(Mover{by}, item);
    return item;
}

std::optional<Rect> extent_of(const Item& item) {
    if (const auto* stroke = std::get_if<Stroke>(&item)) {
        return stroke->points.empty() ? std::nullopt : std::optional(box_around(stroke->points));
    }
    if (const auto* fill = std::get_if<Fill>(&item)) {
        return fill->points.empty() ? std::nullopt : std::optional(box_around(fill->points));
    }
    if (const auto* arc = std::get_if<Arc>(&item)) return box_around(*arc);
    if (const auto* disc = std::get_if<Disc>(&item)) {
        return Rect{disc->centre.x, disc->centre.y, disc->centre.x, disc->centre.y}.grown(disc->radius);
    }
    if (const auto* text = std::get_if<Text>(&item))
        return Rect{text->at.x, text->at.y, text->at.x, text->at.y};
    return std::nullopt;
}

}  // namespace rodwright::drawing
