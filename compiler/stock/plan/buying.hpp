// What has to be bought for a plan.
#pragma once

#include "compiler/stock/plan/group_plan.hpp"

namespace rodwright {

// Names the boards that are bought, and lists them: the boards themselves, planned by their cuts, to which
// nothing is added; and the same lumber by the board foot, for a dealer who sends random widths: the board
// feet of the rough pieces, and the share for waste on top (MillingData::buying).
void add_purchases(const Planning& planning, WoodPlan& plan);

}  // namespace rodwright
