// The patterns of greatest value: bounded knapsack problems.
#pragma once

#include <functional>
#include <vector>

#include "compiler/stock/cutting/linear/lengths.hpp"

namespace rodwright::cutting::linear {

// Depth-first search by falling value per length, for one bar: calls found(value, entries) for each pattern that is
// worth more than all before it and than `floor`. False if it gave up after `node_limit` patterns looked at.
bool best_patterns(const std::vector<Wanted>& wanted, const std::vector<double>& values, int bar_length,
                   double floor, long node_limit,
                   const std::function<void(double, const std::vector<Pattern::Entry>&)>& found);

// The greatest value of a pattern for each bar, exactly: dynamic programming over all lengths.
std::vector<Amount> greatest_values(const Lengths& lengths, const std::vector<Amount>& values);

}  // namespace rodwright::cutting::linear
