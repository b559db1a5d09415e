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

// Along one direction of the paper, the distances from the visible body's lower end at which a feature begins
// or ends, or a round one has its middle: each once, rising, without the ends of the stock and the visible
// body.
std::vector<Rational> stations(const Kind& kind, Direction along);

// How far a coordinate of the kind's frame is from the visible body's lower end along the direction.
Rational distance_along(const Kind& kind, Direction along, const Rational& coordinate);

}  // namespace rodwright::packet
