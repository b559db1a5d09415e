// A view along one of the axes, and the standard ones.
#pragma once

#include "backends/drawing/projection.hpp"
#include "compiler/geometry/geometry.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::drawing {

Point3 vector_of(Direction direction);

// Which way the model's axes run on the paper. right = up x towards.
struct AxisView {
    Direction right{Axis::wide, true};
    Direction up{Axis::tall, true};
    Direction towards{Axis::deep, false};  // from the model to the viewer

    View view() const { return {vector_of(towards), vector_of(up)}; }
    // A point of the model on the paper, not scaled.
    Point on_paper(const Point3& point) const;
};
AxisView axis_view(Direction towards, Direction up);

// The views that stand beside a front view, wherever that looks from.
AxisView from_above(const AxisView& front);
AxisView from_side(const AxisView& front, bool right_side);

// The viewer above, in front and to the right; all three axes equally short (ISO 5456-3, isometric).
View isometric_view();

// The direction square to two others that are square to each other.
Direction cross(Direction a, Direction b);

}  // namespace rodwright::drawing
