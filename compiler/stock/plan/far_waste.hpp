// Bad wood at the far end or edge of a board that need not be cut off.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"
#include "compiler/stock/plan/grid.hpp"
#include "compiler/stock/plan/stock.hpp"

namespace rodwright {

// How much of a board lies beyond the far end and edge of what its tree divides.
struct Beyond {
    Rational length;
    Rational width;
};

// What may stay until it goes with the waste before it: all that is beyond, where nothing lies at that side
// but waste; else 0.
Beyond spared_trim(const cutting::CutTree& tree, const Stock& stock, const Grid& grid,
                   const OffcutLimits& limits);

}  // namespace rodwright
