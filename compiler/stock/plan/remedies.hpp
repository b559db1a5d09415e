// The smallest changes after which the wood would be enough.
#pragma once

#include <string>
#include <vector>

#include "compiler/stock/plan/group_plan.hpp"

namespace rodwright {

struct Shortage {
    const Shortfall& short_of;
    const Grid& grid;
    const MillingData& milling;
    const LengthStyle& style;
};

// Each is tried with a quick plan of its own and stands by itself: less allowance at the ends, less at the
// edges, parts narrower or shorter, one board more. Of each sort the smallest that works; none of a sort
// where nothing does.
std::vector<std::string> remedies(const Shortage& shortage);

}  // namespace rodwright
