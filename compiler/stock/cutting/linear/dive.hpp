// Whole patterns from the linear programme: fix the surest, solve what is left, and so on; with chance,
// again.
#pragma once

#include "compiler/stock/cutting/columns/cover.hpp"
#include "compiler/stock/cutting/random.hpp"

namespace rodwright::cutting::linear {

using columns::Bar;
using columns::Cover;
using columns::Pattern;
using columns::Wanted;

// A plan: patterns, each for one bar. Empty if the dive ended with pieces that no bar was left for, or would
// have cost more than `limit`. Grows `pool` by the patterns it needs. `wild`: how far fractions are shaken,
// in 1/100. Adds the floating-point operations it took, about, to `work`.
std::vector<Pattern> dive(const Cover& cover, std::vector<Pattern>& pool, Amount limit, int wild,
                          Random& random, long& work);

}  // namespace rodwright::cutting::linear
