// Which saw makes a cut, by what machines can hold and reach: `saw_limits` of milling.yaml.
#pragma once

#include "compiler/stock/plan/wood_plan.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright {

// Gives each cut of the board its saw: the one that the shop makes such cuts with, else the table saw, else a
// circular saw along a guide, if its kerf is no wider than the plan's. Sheets go to the table saw as soon as
// they are broken down far enough for it. What no machine can hold is cut by hand. A saw of which
// `saw_limits` says nothing, as a band saw, takes every cut that is meant for it.
void choose_saws(PlannedBoard& board, const MillingData& milling);

// Of all boards of the plan.
std::size_t cuts_by_hand(const WoodPlan& plan);

}  // namespace rodwright
