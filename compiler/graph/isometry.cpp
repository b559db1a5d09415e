#include "compiler/graph/isometry.hpp"

#include <algorithm>

namespace rodwright {

Vector Isometry::apply(const Vector& point) const {
    Vector result = turn.apply(point);
    for (const Axis axis : all_axes) result[axis] += move[axis];
    return result;
}

Body Isometry::apply(const Body& body) const {
    Body result = body;
    result.frame.origin = apply(body.frame.origin);
    result.frame.u = turn.apply(body.frame.u);
    result.frame.v = turn.apply(body.frame.v);
    result.frame.w = turn.apply(body.frame.w);
    return result;
}

Face apply(const Turn& turn, Face face) {
    const Direction direction = turn.apply(outward(face));
    return face_of(direction.axis, direction.positive);
}

BoxEdge Isometry::apply(const BoxEdge& edge) const {
    const Face a = rodwright::apply(turn, edge.a);
    const Face b = rodwright::apply(turn, edge.b);
    return a < b ? BoxEdge{a, b} : BoxEdge{b, a};
}

Isometry Isometry::inverse() const {
    Isometry back{turn.inverse(), {}};
    back.move = back.turn.apply(move);
    for (Rational& coordinate : back.move.at) coordinate = -coordinate;
    return back;
}

Isometry compose(const Isometry& first, const Isometry& second) {
    return {compose(first.turn, second.turn), second.apply(first.move)};
}

Isometry from_frame(const Frame& frame) {
    Isometry result;
    const std::array<Direction, 3> images = {frame.u, frame.v, frame.w};
    for (std::size_t i = 0; i < 3; ++i) {
        result.turn.from[static_cast<std::size_t>(images[i].axis)] = {static_cast<Axis>(i),
                                                                      images[i].positive};
    }
    result.move = frame.origin;
    return result;
}

namespace {

void add_sorted(std::string& text, const Rational& a, const Rational& b) {
    append_exact(text, a < b ? a : b);
    append_exact(text, a < b ? b : a);
}

// Coordinate of a section's point along an axis that the frame's u or v runs along.
Rational along(const Body& body, Axis axis, const Point2& point) {
    const bool is_u = body.frame.u.axis == axis;
    const Direction direction = is_u ? body.frame.u : body.frame.v;
    const Rational& offset = is_u ? point.u : point.v;
    return direction.positive ? Rational(body.frame.origin[axis] + offset)
                              : Rational(body.frame.origin[axis] - offset);
}

bool before(const Point2& a, const Point2& b) {
    return a.u != b.u ? a.u < b.u : a.v < b.v;
}

// Starts at the least corner and goes towards the lesser of its neighbours.
void canonical_order(std::vector<Point2>& corners) {
    const auto least = std::min_element(corners.begin(), corners.end(), before);
    std::rotate(corners.begin(), least, corners.end());
    if (corners.size() > 2 && before(corners.back(), corners[1]))
        std::reverse(corners.begin() + 1, corners.end());
}

// Where the body ends along the axis it is swept along; it starts at its origin.
Rational sweep_end(const Body& body) {
    const Rational& start = body.frame.origin[body.frame.w.axis];
    return body.frame.w.positive ? Rational(start + body.length) : Rational(start - body.length);
}

// A box is the same box whichever way it is swept: its two sides along each axis, in the order of axes.
std::string canonical_box(const Body& body) {
    std::string text = "box ";
    for (const Axis axis : all_axes) {
        const Rational& origin = body.frame.origin[axis];
        if (axis == body.frame.w.axis) {
            add_sorted(text, origin, sweep_end(body));
        } else {
            const Rational half = (axis == body.frame.u.axis ? body.size_u : body.size_v) / 2;
            append_exact(text, origin - half);
            append_exact(text, origin + half);
        }
    }
    return text;
}

// The section's corners by the two axes across the sweep; of a cylinder its centre.
std::vector<Point2> canonical_section(const Body& body) {
    const Axis sweep = body.frame.w.axis;
    const Axis first = sweep == Axis::wide ? Axis::deep : Axis::wide;
    const Axis second = sweep == Axis::tall ? Axis::deep : Axis::tall;
    if (body.form == BodyForm::cylinder) return {{body.frame.origin[first], body.frame.origin[second]}};
    std::vector<Point2> corners;
    for (const Point2& point : body.profile) {
        corners.push_back({along(body, first, point), along(body, second, point)});
    }
    canonical_order(corners);
    return corners;
}

}  // namespace

std::string canonical(const Body& body) {
    if (body.form == BodyForm::box) return canonical_box(body);
    std::string text = body.form == BodyForm::cylinder ? "cylinder " : "prism ";
    text += axis_name(body.frame.w.axis);
    text += ' ';
    if (body.form == BodyForm::cylinder) append_exact(text, body.size_u);
    add_sorted(text, body.frame.origin[body.frame.w.axis], sweep_end(body));
    for (const Point2& corner : canonical_section(body)) {
        append_exact(text, corner.u);
        append_exact(text, corner.v);
    }
    return text;
}

}  // namespace rodwright
