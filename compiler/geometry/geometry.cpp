#include "compiler/geometry/geometry.hpp"

#include <algorithm>

namespace rodwright {

static std::size_t index(Axis axis) {
    return static_cast<std::size_t>(axis);
}

std::string_view face_name(Face face) {
    static constexpr std::array<std::string_view, 6> names = {"left", "right",  "front",
                                                              "back", "bottom", "top"};
    return names[static_cast<std::size_t>(face)];
}

std::string_view axis_name(Axis axis) {
    static constexpr std::array<std::string_view, 3> names = {"wide", "deep", "tall"};
    return names[index(axis)];
}

std::string_view size_name(Axis axis) {
    static constexpr std::array<std::string_view, 3> names = {"length", "width", "thickness"};
    return names[index(axis)];
}

std::string_view direction_words(Direction way) {
    static constexpr std::array<std::array<std::string_view, 2>, 3> words = {
        {{"to the left", "to the right"}, {"forwards", "backwards"}, {"downwards", "upwards"}}};
    return words[index(way.axis)][way.positive ? 1 : 0];
}

// The determinant is the sign of the permutation times the product of the signs.
bool Turn::mirrored() const {
    bool odd = false;
    for (std::size_t i = 0; i < 3; ++i) {
        if (!from[i].positive) odd = !odd;
        for (std::size_t j = 0; j < i; ++j) {
            if (from[j].axis > from[i].axis) odd = !odd;
        }
    }
    return odd;
}

Direction Turn::apply(Direction direction) const {
    const Direction taken = inverse().from[index(direction.axis)];
    return {taken.axis, taken.positive == direction.positive};
}

Vector Turn::apply(const Vector& vector) const {
    Vector turned;
    for (const Axis axis : all_axes) {
        const Direction source = from[index(axis)];
        turned[axis] = vector[source.axis];
        if (!source.positive) turned[axis] = -turned[axis];
    }
    return turned;
}

Turn Turn::inverse() const {
    Turn back;
    for (const Axis axis : all_axes) {
        const Direction source = from[index(axis)];
        back.from[index(source.axis)] = {axis, source.positive};
    }
    return back;
}

Turn compose(const Turn& first, const Turn& second) {
    Turn both;
    for (std::size_t i = 0; i < 3; ++i) {
        const Direction middle = second.from[i];
        const Direction source = first.from[index(middle.axis)];
        both.from[i] = {source.axis, source.positive == middle.positive};
    }
    return both;
}

static std::vector<Turn> list_turns() {
    std::vector<Turn> turns;
    std::array<Axis, 3> order = all_axes;
    do {
        for (unsigned signs = 0; signs < 8; ++signs) {
            Turn turn;
            for (std::size_t i = 0; i < 3; ++i) turn.from[i] = {order[i], (signs >> i & 1U) == 0};
            turns.push_back(turn);
        }
    } while (std::next_permutation(order.begin(), order.end()));
    std::stable_partition(turns.begin(), turns.end(), [](const Turn& turn) { return !turn.mirrored(); });
    return turns;
}

const std::vector<Turn>& all_turns() {
    static const std::vector<Turn> turns = list_turns();
    return turns;
}

Box box_around(const Box& a, const Box& b) {
    Box both;
    for (const Axis axis : all_axes) {
        both.low[axis] = std::min(a.low[axis], b.low[axis]);
        both.high[axis] = std::max(a.high[axis], b.high[axis]);
    }
    return both;
}

// Extents along the frame's own axes, laid out along those that it is given in.
static void set_extent(Box& box, const Frame& frame, Direction along, const Rational& low,
                       const Rational& high) {
    const Rational& origin = frame.origin[along.axis];
    box.low[along.axis] = along.positive ? Rational(origin + low) : Rational(origin - high);
    box.high[along.axis] = along.positive ? Rational(origin + high) : Rational(origin - low);
}

Box bounds_of(const Body& body) {
    Rational low_u = -body.size_u / 2, high_u = body.size_u / 2;
    Rational low_v = -body.size_v / 2, high_v = body.size_v / 2;
    if (body.form == BodyForm::prism && !body.profile.empty()) {
        low_u = high_u = body.profile.front().u;
        low_v = high_v = body.profile.front().v;
        for (const Point2& corner : body.profile) {
            low_u = std::min(low_u, corner.u);
            high_u = std::max(high_u, corner.u);
            low_v = std::min(low_v, corner.v);
            high_v = std::max(high_v, corner.v);
        }
    }
    Box box;
    set_extent(box, body.frame, body.frame.u, low_u, high_u);
    set_extent(box, body.frame, body.frame.v, low_v, high_v);
    set_extent(box, body.frame, body.frame.w, 0, body.length);
    return box;
}

}  // namespace rodwright
