// Can the piece be put together? Findings about parts that run into one another or lock each other.
#pragma once

#include "compiler/graph/piece.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

// Adds Code::run_into for parts that share wood, and Code::locked for groups of which no part can be brought
// in along a straight motion, with the joint's end that would free them if there is one. Silent where a part
// has no solid: that is reported already. Code::not_tried past limits::tried_parts.
void check_assembly(const Piece& piece, SolidStore& solids, Diagnostics& diagnostics);

}  // namespace rodwright
