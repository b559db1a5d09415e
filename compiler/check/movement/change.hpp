// How much wood changes in size with its moisture.
#pragma once

#include <optional>

#include "compiler/graph/piece.hpp"

namespace rodwright {

// Change for each percent of moisture, as a part of the size, along an axis of the kind: none along the grain
// and in sheet goods; across it by the cut of the wood, flat where the design does not say. Empty where the
// wood is not known. (Wood Handbook, FPL-GTR-190, table 13-5.)
std::optional<double> change_per_percent(const Piece& piece, const Kind& kind, Axis kind_axis);

// The same along an axis of the piece.
std::optional<double> change_per_percent(const Piece& piece, const Part& part, Axis piece_axis);

// The axis of its kind that lies along an axis of the piece.
Axis kind_axis_of(const Part& part, Axis piece_axis);

}  // namespace rodwright
