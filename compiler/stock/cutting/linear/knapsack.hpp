// Patterns of great value: bounded knapsack problems.
#pragma once

#include <functional>
#include <vector>

#include "compiler/stock/cutting/columns/cover.hpp"

namespace rodwright::cutting::linear {

using columns::Bar;
using columns::Cover;
using columns::Pattern;
using columns::Wanted;

// Depth-first search by falling value per length, for one bar: calls found(value, entries) for each pattern
// that is worth more than `floor`; what that returns is the floor from then on. Gives the number of steps it
// took; at `step_limit` it gave up.
using FoundPattern = std::function<double(double, const std::vector<Pattern::Entry>&)>;
long valuable_patterns(const std::vector<Wanted>& wanted, const std::vector<double>& values, int bar_length,
                       double floor, long step_limit, const FoundPattern& found);

// The greatest value of a pattern for each bar, exactly: dynamic programming over all cover.
std::vector<Amount> greatest_values(const Cover& cover, const std::vector<Amount>& values);

}  // namespace rodwright::cutting::linear
