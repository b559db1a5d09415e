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

void add(std::string& text, const Rational& value) {
    text += value.get_str();
    text += ' ';
}

// Coordinate of a section's point along an axis that the frame's u or v runs along.
Rational along(const Body& body, Axis axis, const Point2& point) {
    const bool is_u = body.frame.u.axis == axis;
    const Direction direction = is_u ? body.frame.u : body.frame.v;
    const Rational& offset = is_u ? point.u : point.v;
    return direction.positive ? Rational(body.frame.origin[axis] + offset)
                              : Rational(body.frame.origin[axis] - offset);
}

std::vector<Point2> section(const Body& body) {
    const Rational half_u = body.size_u / 2;
    const Rational half_v = body.size_v / 2;
    if (body.form == BodyForm::box) {
        return {{-half_u, -half_v}, {half_u, -half_v}, {half_u, half_v}, {-half_u, half_v}};
    }
    if (body.form == BodyForm::cylinder) return {{0, 0}};
    return body.profile;
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

}  // namespace

std::string canonical(const Body& body) {
    const Axis sweep = body.frame.w.axis;
    std::vector<Axis> others;
    for (const Axis axis : all_axes) {
        if (axis != sweep) others.push_back(axis);
    }
    std::vector<Point2> corners;
    for (const Point2& point : section(body)) {
        corners.push_back({along(body, others[0], point), along(body, others[1], point)});
    }
    const Rational& start = body.frame.origin[sweep];
    const Rational end =
        body.frame.w.positive ? Rational(start + body.length) : Rational(start - body.length);
    std::string text;
    if (body.form == BodyForm::box) {
        // A box is the same box whichever way it is swept: its least and greatest corner in the order of
        // axes.
        const auto [least, greatest] = std::minmax_element(corners.begin(), corners.end(), before);
        std::array<std::pair<Rational, Rational>, 3> sides;
        sides[static_cast<std::size_t>(sweep)] = {std::min(start, end), std::max(start, end)};
        sides[static_cast<std::size_t>(others[0])] = {least->u, greatest->u};
        sides[static_cast<std::size_t>(others[1])] = {least->v, greatest->v};
        text = "box ";
        for (const auto& [low, high] : sides) {
            add(text, low);
            add(text, high);
        }
        return text;
    }
    canonical_order(corners);
    text = body.form == BodyForm::cylinder ? "cylinder " : "prism ";
    text += axis_name(sweep);
    text += ' ';
    if (body.form == BodyForm::cylinder) add(text, body.size_u);
    add(text, std::min(start, end));
    add(text, std::max(start, end));
    for (const Point2& corner : corners) {
        add(text, corner.u);
        add(text, corner.v);
    }
    return text;
}

}  // namespace rodwright
