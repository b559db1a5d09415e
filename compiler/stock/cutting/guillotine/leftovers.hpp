// The second level of the goal, when the cost is settled: what is left in few large rectangles.
#pragma once

#include "compiler/stock/cutting/cut_tree.hpp"
#include "compiler/stock/cutting/guillotine/layout.hpp"

namespace rodwright::cutting::guillotine {

// Layouts of the same parts at no more cost, whose free rectangles have a greater sum of squares of areas, if
// the search finds such. Only those that are useful leftovers count.
std::vector<Layout> with_large_leftovers(const Kinds& kinds, const std::vector<Layout>& layouts,
                                         Effort effort);

// The same for a plan in one dimension that holds all parts.
void leave_large_rests(const Problem& problem, CuttingPlan& plan, Effort effort);

// The layouts' cut trees and what they cost, into the plan.
void write_sheets(const Kinds& kinds, const std::vector<Layout>& layouts, CuttingPlan& plan);

}  // namespace rodwright::cutting::guillotine
