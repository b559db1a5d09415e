// The first cuts of a board: bad ends, and the edges of a sheet, go before the rest is cut up.
#pragma once

#include "compiler/stock/plan/wood_plan.hpp"

namespace rodwright {

// A cut of that region; what comes of it is still open.
PlannedCut cut_of(std::size_t region, bool crosscut, const Rational& at, const Rational& setting);

// Cuts a board of which nothing is cut yet down to what is usable. The kerfs lie in what goes. Returns the
// index of the region that stays.
std::size_t trim(PlannedBoard& board, const PlanArea& usable);

}  // namespace rodwright
