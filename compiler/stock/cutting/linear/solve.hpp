// Plans in one dimension: all parts and all stock have the same width, so that every cut goes across the
// length.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"

namespace rodwright::cutting::linear {

bool applies(const Problem& problem);
CuttingPlan solve(const Problem& problem, Effort effort);

}  // namespace rodwright::cutting::linear
