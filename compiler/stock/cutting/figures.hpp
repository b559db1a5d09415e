// What a plan is judged by where costs are equal: first how useful what is left is, then how it is cut.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"

namespace rodwright::cutting {

struct PlanFigures {
    int useful_rectangles = 0;  // left over, of the problem's least useful size or more
    Amount useful_area = 0;
    double usefulness = 0;  // sum of the squares of their areas: few large ones are better than many small
    int cuts = 0;
    // Settings of the fence: a setting is an axis and the extent that is cut off, and serves for all cuts of
    // one stock piece that share it.
    int settings = 0;
};

PlanFigures figures_of(const Problem& problem, const CuttingPlan& plan);

}  // namespace rodwright::cutting
