// How the fibres run through a part.
#pragma once

#include "compiler/assembly/blocking.hpp"

namespace rodwright {

struct StraightGrain {
    double narrowest = 0;  // the least width of the part over its length, mm
    double through = 0;    // the width of the fibres that run through from end to end; below 0: none do

    // Of the narrowest place; all of it where there is nothing to measure.
    double share() const { return narrowest > 0 ? through / narrowest : 1; }
};

// Of a part in the piece's axes, over the middle of its length along `grain` from `low` to `high`, in the
// direction `across`. Pockets count as wood: the outermost surfaces do.
StraightGrain straight_grain(const Mesh& mesh, Axis grain, Axis across, double low, double high);

}  // namespace rodwright
