// What of a wood plan stands in the cut list: rough sizes, and the boards that parts come from.
#pragma once

#include "backends/cutlist/cut_list.hpp"

namespace rodwright {

void add_wood_plan(CutList& list, const Piece& piece, const WoodPlan& plan);

}  // namespace rodwright
