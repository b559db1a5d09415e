// Where what is asked for cannot be had from any board: matches that are given up, parts that are glued up.
#pragma once

#include "compiler/stock/plan/group_plan.hpp"

namespace rodwright {

// Matches that no board holds, or whose leaves are too wide for the saw, are reported as Code::match_given_up
// and taken one by one.
void give_up_matches(Demands& demands, const Planning& planning, Diagnostics& diagnostics);

// Where the design does not say that a wide part is glued up, one board is tried first: a panel is made of it
// where no board is wide enough, which the plan's notes then say.
void choose_boards_or_panels(Demands& demands, const Planning& planning, WoodPlan& plan);

}  // namespace rodwright
