// Bodies that are left or taken away, as a view along one axis of their kind shows them, exactly.
#pragma once

#include <vector>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/sheet.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::packet {

// A rectangle on the paper of a view, not scaled.
struct Extents {
    Point2 low;
    Point2 high;

    drawing::Rect rect() const;
    Rational width() const { return high.u - low.u; }
    Rational height() const { return high.v - low.v; }
    friend bool operator==(const Extents&, const Extents&) = default;
};
Extents around(const Extents& a, const Extents& b);

// A point of the kind on the paper, and how far towards the viewer it is.
Point2 on_paper(const drawing::AxisView& view, const Vector& point);
Rational depth_in(const drawing::AxisView& view, const Vector& point);
Extents on_paper(const drawing::AxisView& view, const Box& box);

struct BodyOutline {
    Extents near;                 // of the end nearest to the viewer
    Extents far;                  // of the end furthest from the viewer: wider, of a dovetail's socket
    std::vector<Point2> corners;  // of a polygon swept along the view; else none
    Rational front;               // depths of those ends
    Rational back;
    drawing::Item
        shape;  // the near end: a circle or polygon of a body swept along the view, else a rectangle

    Extents all() const { return around(near, far); }
};
BodyOutline body_outline(const Body& body, const drawing::AxisView& view);

drawing::Stroke rectangle_of(const Extents& extents, drawing::LineRole role);

// A view in which the directions run to the right and towards the viewer; they are square to each other.
drawing::AxisView view_with(Direction towards, Direction right);

}  // namespace rodwright::packet
