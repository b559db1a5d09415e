// Plans that cost hardly more than the linear programme says: few patterns come into question for them, so
// that all ways to put these together can be tried.
#pragma once

#include "compiler/stock/cutting/columns/master.hpp"

namespace rodwright::cutting::linear {

using columns::Bar;
using columns::Cover;
using columns::Master;
using columns::Pattern;
using columns::Wanted;

// A plan that costs no more than `limit`; empty if there is none, or if too many patterns or steps would have
// to be tried. The master has been optimised over all patterns.
std::vector<Pattern> tight_cover(const Cover& cover, const Master& master, Amount limit);

}  // namespace rodwright::cutting::linear
