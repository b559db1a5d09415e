// How good a plan is: what no plan for the same pieces can come below.
#pragma once

#include "compiler/stock/plan/group_plan.hpp"

namespace rodwright {

// One for each wood whose pieces all found a place: the number of boards and their worth in any plan for
// them, of all thicknesses together, whatever staves panels are glued from within their limits. Blanks are as
// they are, matched or joined or to be sawn open, and defects are as if they were not there, which only
// lowers the bound.
//
// What parts take up is measured in several ways (cutting::measures) for all pieces of one thickness and more
// together: these come out of boards that are as thick. No choice of boards that holds less by one of the
// measures can be enough.
std::vector<PlanBound> bounds_of(const PlanState& state, const Planning& planning);

}  // namespace rodwright
