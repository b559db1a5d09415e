#include "backends/drawing/axis_view.hpp"

namespace rodwright::drawing {

Point3 vector_of(Direction direction) {
    Point3 vector{};
    vector[static_cast<std::size_t>(direction.axis)] = direction.positive ? 1 : -1;
    return vector;
}

Direction cross(Direction a, Direction b) {
    const int first = static_cast<int>(a.axis);
    const int second = static_cast<int>(b.axis);
    const bool cyclic = (first + 1) % 3 == second;
    return {static_cast<Axis>(3 - first - second), (a.positive == b.positive) == cyclic};
}

Point AxisView::on_paper(const Point3& point) const {
    const auto along = [&](Direction direction) {
        const double value = point[static_cast<std::size_t>(direction.axis)];
        return direction.positive ? value : -value;
    };
    return {along(right), along(up)};
}

AxisView axis_view(Direction towards, Direction up) {
    return {cross(up, towards), up, towards};
}

AxisView from_above(const AxisView& front) {
    return axis_view(front.up, -front.towards);
}

AxisView from_side(const AxisView& front, bool right_side) {
    return axis_view(right_side ? front.right : -front.right, front.up);
}

View isometric_view() {
    return {{1, -1, 1}, {0, 0, 1}};
}

}  // namespace rodwright::drawing
