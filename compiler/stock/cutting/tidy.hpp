// The third level of the goal: the same pieces from the same cuts, in the order in which they are easiest to
// cut.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"

namespace rodwright::cutting {

// Among the strips that parallel cuts make of one rectangle, equal ones come side by side, so that one
// setting of the fence serves for all of them, and waste comes last, farthest from the corner that is
// measured from. Where nothing is wasted, the last strip needs no setting: it is one of an extent that is
// rare on its stock piece. Where the small strips, which come last, would leave a cut with both sides smaller
// than CutRule::least_held, they come first. Equal stock pieces come one after the other, the fullest first.
// Rectangles with defects in them stay as they are.
void tidy(const Problem& problem, CuttingPlan& plan);

}  // namespace rodwright::cutting
