// A kind of part as its sheet shows it: which way it is looked at, and where its features are, exactly.
#pragma once

#include <optional>
#include <vector>

#include "backends/drawing/axis_view.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::packet {

// The stock with its joints: from the lowest to the highest coordinate of the kind's frame.
Box overall_box(const Kind& kind);
// The visible body: (0, 0, 0) to the kind's size.
Box visible_box(const Kind& kind);

// The front view of a kind: its length runs to the right. Of the ways it can lie, the one that shows most of
// its pockets open towards the viewer or upwards.
drawing::AxisView lying(const Kind& kind);

// The box around a feature's body, within the stock; empty where it is not in the stock at all or has no
// body.
std::optional<Box> extent_within(const Body& body, const Box& stock);

// The corners of a body's section within the stock, in the plane where its sweep starts.
std::vector<Vector> section_within(const Body& body, const Box& stock);

// A cylinder whose axis lies outside the stock cuts a hollow: an arc, told by its chord and its rise.
struct Hollow {
    Direction open;  // the side of the stock that the arc is cut into
    Axis across{};   // the chord's axis
    Rational start;  // of the chord, the lower coordinate
    Rational chord;  // 2 sqrt(r^2 - d^2), d from the axis to the stock; exact only where the root is
    Rational rise;   // r - d
};
std::optional<Hollow> hollow_of(const Body& body, const Box& stock);

// What a body gives to measure along an axis: the middle of a hole seen square to it, else its corners.
// Rising, each once; none of a body with so many that it is a curve.
std::vector<Rational> marks_of(const Body& body, const Box& stock, Axis axis);

// The side that a body stands out of or a cut is open to. The sweep alone does not tell: a dovetail is swept
// along its socket. A cut that is open to both ends of an axis says nothing by that axis.
Direction open_side(const Kind& kind, const Feature& feature);

// Along one direction of the paper, the distances from the visible body's lower end at which a feature begins
// or ends, or a round one has its middle: each once, rising, without the ends of the stock and the visible
// body.
std::vector<Rational> stations(const Kind& kind, Direction along);
// Only where features begin, or have their middle: what is left of the stations where all of them have no
// room.
std::vector<Rational> starts(const Kind& kind, Direction along);

// How far a coordinate of the kind's frame is from the visible body's lower end along the direction.
Rational distance_along(const Kind& kind, Direction along, const Rational& coordinate);

}  // namespace rodwright::packet
