// The cutting core's one function.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"

namespace rodwright::cutting {

// A plan that holds all parts, as good as `effort` finds it: of least cost; among such with the most useful
// leftovers; and cut in a tidy order (see figures.hpp and tidy.hpp). Where no plan holds all parts, the parts
// left out are listed in `missing`. A problem with sizes that are not positive, larger than max_size,
// or negative quantities or kerfs is the caller's mistake: std::invalid_argument.
CuttingPlan solve(const Problem& problem, Effort effort);

}  // namespace rodwright::cutting
