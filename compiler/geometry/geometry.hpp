// Exact geometry of pieces made of axis-parallel parts.
//
// Piece axes: wide runs left to right, deep front to back, tall bottom to top; all lengths are millimetres.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <string_view>
#include <vector>

#include "compiler/quantity/rational.hpp"

namespace rodwright {

enum class Axis : std::uint8_t { wide, deep, tall };
inline constexpr std::array<Axis, 3> all_axes = {Axis::wide, Axis::deep, Axis::tall};

// One way along an axis. In the order of Face, so that a face and its outward direction share a number.
struct Direction {
    Axis axis = Axis::wide;
    bool positive = true;

    Direction operator-() const { return {axis, !positive}; }
    friend bool operator==(const Direction&, const Direction&) = default;
};

enum class Face : std::uint8_t { left, right, front, back, bottom, top };
inline constexpr std::array<Face, 6> all_faces = {Face::left, Face::right,  Face::front,
                                                  Face::back, Face::bottom, Face::top};

inline Axis axis_of(Face face) {
    return static_cast<Axis>(static_cast<int>(face) / 2);
}
inline bool is_far(Face face) {
    return static_cast<int>(face) % 2 == 1;  // right, back, top: the greater coordinate
}
inline Face face_of(Axis axis, bool far_side) {
    return static_cast<Face>(2 * static_cast<int>(axis) + (far_side ? 1 : 0));
}
inline Face opposite(Face face) {
    return face_of(axis_of(face), !is_far(face));
}
inline Direction outward(Face face) {
    return {axis_of(face), is_far(face)};
}
std::string_view face_name(Face face);
std::string_view axis_name(Axis axis);            // "wide"
std::string_view size_name(Axis axis);            // "length", where it is a part's own axis
std::string_view direction_words(Direction way);  // "to the left", "upwards"

struct Vector {
    std::array<Rational, 3> at;

    Rational& operator[](Axis axis) { return at[static_cast<std::size_t>(axis)]; }
    const Rational& operator[](Axis axis) const { return at[static_cast<std::size_t>(axis)]; }
    friend bool operator==(const Vector&, const Vector&) = default;
};

struct Box {
    Vector low;
    Vector high;

    Rational size(Axis axis) const { return high[axis] - low[axis]; }
    const Rational& at(Face face) const { return is_far(face) ? high[axis_of(face)] : low[axis_of(face)]; }
    friend bool operator==(const Box&, const Box&) = default;
};

// A right- or left-handed set of axes somewhere: u, v and w are along different axes.
struct Frame {
    Vector origin;
    Direction u{Axis::wide, true};
    Direction v{Axis::deep, true};
    Direction w{Axis::tall, true};

    friend bool operator==(const Frame&, const Frame&) = default;
};

struct Point2 {
    Rational u;
    Rational v;
    friend bool operator==(const Point2&, const Point2&) = default;
};

// A body swept along the frame's w from 0 to `length`, over a section in the frame's u and v:
//   box       a rectangle size_u by size_v centred on the origin
//   cylinder  a circle of diameter size_u (= size_v) centred on the origin
//   prism     the closed polygon `profile` (simple, not self-crossing, either sense of turn)
enum class BodyForm : std::uint8_t { box, cylinder, prism };

struct Body {
    BodyForm form = BodyForm::box;
    Frame frame;
    Rational size_u;
    Rational size_v;
    Rational length;
    std::vector<Point2> profile;

    friend bool operator==(const Body&, const Body&) = default;
};

// The least box that holds the body, in the axes that its frame is given in.
Box bounds_of(const Body& body);
// The least that holds both.
Box box_around(const Box& a, const Box& b);

// A turn (and, if the determinant is -1, a reflection) that maps axes to axes: axis i of the result takes its
// coordinate from `from[i]`, which runs the other way if not positive.
struct Turn {
    std::array<Direction, 3> from = {Direction{Axis::wide, true}, Direction{Axis::deep, true},
                                     Direction{Axis::tall, true}};

    bool mirrored() const;
    Direction apply(Direction direction) const;
    Vector apply(const Vector& vector) const;
    Turn inverse() const;
    friend bool operator==(const Turn&, const Turn&) = default;
};

// First `first`, then `second`.
Turn compose(const Turn& first, const Turn& second);
// All 48 of them, the 24 turns first, the identity first of all.
const std::vector<Turn>& all_turns();

}  // namespace rodwright
