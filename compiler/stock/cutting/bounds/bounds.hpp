// Lower bounds on the cost of all plans.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"

namespace rodwright::cutting {

// The best of the bounds that need no search: area and dual feasible functions.
LowerBound lower_bound(const Problem& problem);

// True only if no plan holds all parts, which some measure of all stock together shows.
bool too_little_stock(const Problem& problem);

}  // namespace rodwright::cutting
