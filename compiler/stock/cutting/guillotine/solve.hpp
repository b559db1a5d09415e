// Plans of guillotine cuts in two dimensions.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"

namespace rodwright::cutting::guillotine {

CuttingPlan solve(const Problem& problem, Effort effort);
CuttingPlan solve_for_cost_only(const Problem& problem, Effort effort);

}  // namespace rodwright::cutting::guillotine
