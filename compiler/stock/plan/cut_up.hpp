// From the core's cut trees to boards with their cuts in the order of the work.
#pragma once

#include <map>

#include "compiler/stock/plan/level.hpp"

namespace rodwright {

// Adds the boards of a level's plan to `plan` (or, where a tree is about what is left of one, cuts that one
// further); returns the indices of those that are new. Every demand's pieces are given out in their order.
std::vector<std::size_t> cut_up(const LevelPlan& solved, const Level& level, const Grid& grid,
                                const MillingData& milling, WoodPlan& plan);

}  // namespace rodwright
