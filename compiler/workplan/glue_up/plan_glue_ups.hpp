// What is glued together with what, in which order: from how the piece comes apart.
#pragma once

#include <vector>

#include "compiler/assembly/take_apart.hpp"
#include "compiler/workplan/data/curing.hpp"
#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

// Joints whose clamps pull one way are glued at once as long as the glue stays open for all of them: such a
// group is flat in its clamps, and its corners are measured in one plane. What slides in across and holds by
// itself is not pressed for time: each is done before the next is begun. Groups that nothing but fastenings
// hold together are left apart.
//
// Of the ways in which the piece comes apart, the one with the fewest glue-ups is looked for, as far as a
// fixed effort goes; `apart` is one that is known.
std::vector<GlueUp> plan_glue_ups(const Piece& piece, const Blocking& blocking, const TakenApart& apart,
                                  const Curing& curing);

// All joints with glue, and those closed dry with them, as one: where the solids could not be asked.
std::vector<GlueUp> one_glue_up(const Piece& piece);

}  // namespace rodwright
