// Column generation: the patterns that the linear programme needs, and the bound that it proves.
#pragma once

#include "compiler/stock/cutting/columns/master.hpp"

namespace rodwright::cutting::linear {

using columns::Bar;
using columns::Cover;
using columns::Master;
using columns::Pattern;
using columns::Wanted;

// Adds patterns to the master, which belongs to these cover, until it has those of its optimum (or the search
// for better ones gives up); appends what it adds to `pool`.
// Gives the floating-point operations it took, about.
long generate_columns(const Cover& cover, Master& master, std::vector<Pattern>& pool);

// Patterns to start from: each bar filled with the longest pieces left, until all are cut.
std::vector<Pattern> first_fit(const Cover& cover);

// A lower bound on the cost of all plans, proved in whole numbers from the master's duals: scaled and rounded
// down, corrected by what the dearest pattern of each bar lacks, and rounded up to a multiple of the costs'
// divisor.
Amount proved_bound(const Cover& cover, const Master& master);

}  // namespace rodwright::cutting::linear
