// Clamps for a glue-up, and what is measured in them.
//
// Pressure spreads at 45 degrees from a clamp's pad (common practice): clamps stand no further apart than
// twice the depth of wood and pad between jaw and glue line. A rectangle a by b has equal diagonals of
// sqrt(a^2 + b^2).
#pragma once

#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

// `pressed`: its joints have to be clamped, along that axis. The diagonals of three parts or more are
// measured then.
void add_clamping(const Piece& piece, Axis along, bool pressed, GlueUp& glue_up);

}  // namespace rodwright
