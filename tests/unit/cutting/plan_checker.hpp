// Proves a cutting plan from its cut trees alone, with no code of the solver's.
#pragma once

#include <string>
#include <vector>

#include "compiler/stock/cutting/cut_tree.hpp"

namespace rodwright::cutting {

// What is wrong with the plan, in words; nothing if each sheet is cut edge to edge with the kerf, every part
// is there exactly as often as asked (those in `missing` apart), turned only where it may be, on no defect,
// within the rule's stages and the stock's numbers, and the cost is the sum of the sheets'.
std::vector<std::string> check_plan(const Problem& problem, const CuttingPlan& plan);

}  // namespace rodwright::cutting
