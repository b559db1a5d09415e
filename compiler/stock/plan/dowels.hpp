// Rods of dowel to buy, for the dowels that joints need.
#pragma once

#include "compiler/stock/plan/group_plan.hpp"

namespace rodwright {

// Adds to `plan` the rods that a dealer sells and the dowels of all joints are cut from, for the least money:
// of each diameter by itself, a kerf between two dowels. A joint's dowels are its supplies of that name; it
// says their `diameter` and how `long` they are. What no rod is sold for is said in the plan's notes; where
// no rods are sold at all, dowels are bought ready made and the hardware list has them.
void add_dowel_rods(const Planning& planning, WoodPlan& plan);

}  // namespace rodwright
