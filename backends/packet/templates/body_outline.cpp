#include "backends/packet/templates/body_outline.hpp"

#include <algorithm>
#include <numbers>

namespace rodwright::packet {

using namespace drawing;

namespace {

std::vector<Point2> section_of(const Body& body) {
    if (body.form == BodyForm::prism) return body.profile;
    const Rational u = body.size_u / 2;
    const Rational v = body.size_v / 2;
    return {{-u, -v}, {u, -v}, {u, v}, {-u, v}};
}

void go(Vector& point, Direction direction, const Rational& by) {
    if (direction.positive) {
        point[direction.axis] += by;
    } else {
        point[direction.axis] -= by;
    }
}

// The corners of the section at one end of the sweep.
std::vector<Vector> corners_at(const Body& body, const Rational& sweep) {
    std::vector<Vector> corners;
    for (const Point2& corner : section_of(body)) {
        Vector point = body.frame.origin;
        go(point, body.frame.u, corner.u);
        go(point, body.frame.v, corner.v);
        go(point, body.frame.w, sweep);
        corners.push_back(std::move(point));
    }
    return corners;
}

Extents extents_of(const std::vector<Point2>& points) {
    Extents extents{points[0], points[0]};
    for (const Point2& point : points) extents = around(extents, {point, point});
    return extents;
}

Point point_of(const Point2& point) {
    return {point.u.get_d(), point.v.get_d()};
}

Item shape_of(const Body& body, const AxisView& view, const BodyOutline& outline) {
    if (body.form == BodyForm::cylinder && body.frame.w.axis == view.towards.axis) {
        const Point centre = point_of(on_paper(view, body.frame.origin));
        return Arc{LineRole::visible, centre, body.size_u.get_d() / 2, 0, 2 * std::numbers::pi};
    }
    if (outline.corners.empty()) return rectangle_of(outline.near, LineRole::visible);
    Stroke polygon{LineRole::visible, {}, true};
    for (const Point2& corner : outline.corners) polygon.points.push_back(point_of(corner));
    return polygon;
}

}  // namespace

Rect Extents::rect() const {
    return {low.u.get_d(), low.v.get_d(), high.u.get_d(), high.v.get_d()};
}

Extents around(const Extents& a, const Extents& b) {
    return {{std::min(a.low.u, b.low.u), std::min(a.low.v, b.low.v)},
            {std::max(a.high.u, b.high.u), std::max(a.high.v, b.high.v)}};
}

Point2 on_paper(const AxisView& view, const Vector& point) {
    const auto along = [&](Direction direction) {
        return direction.positive ? point[direction.axis] : Rational(-point[direction.axis]);
    };
    return {along(view.right), along(view.up)};
}

Rational depth_in(const AxisView& view, const Vector& point) {
    const Rational& at = point[view.towards.axis];
    return view.towards.positive ? at : Rational(-at);
}

Extents on_paper(const AxisView& view, const Box& box) {
    return extents_of({on_paper(view, box.low), on_paper(view, box.high)});
}

BodyOutline body_outline(const Body& body, const AxisView& view) {
    std::vector<Vector> corners = corners_at(body, 0);
    for (Vector& corner : corners_at(body, body.length)) corners.push_back(std::move(corner));
    BodyOutline outline;
    outline.front = outline.back = depth_in(view, corners[0]);
    for (const Vector& corner : corners) {
        outline.front = std::max(outline.front, depth_in(view, corner));
        outline.back = std::min(outline.back, depth_in(view, corner));
    }
    const auto extents_at = [&](const Rational& depth) {
        std::vector<Point2> points;
        for (const Vector& corner : corners) {
            if (depth_in(view, corner) == depth) points.push_back(on_paper(view, corner));
        }
        return extents_of(points);
    };
    outline.near = extents_at(outline.front);
    outline.far = extents_at(outline.back);
    if (body.form == BodyForm::prism && body.frame.w.axis == view.towards.axis) {
        for (const Vector& corner : corners_at(body, 0)) outline.corners.push_back(on_paper(view, corner));
    }
    outline.shape = shape_of(body, view, outline);
    return outline;
}

Stroke rectangle_of(const Extents& extents, LineRole role) {
    const Rect box = extents.rect();
    return {role,
            {{box.left, box.bottom}, {box.right, box.bottom}, {box.right, box.top}, {box.left, box.top}},
            true};
}

AxisView view_with(Direction towards, Direction right) {
    return axis_view(towards, cross(towards, right));
}

}  // namespace rodwright::packet
