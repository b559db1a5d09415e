// What cutting a plan does to the rack.
#pragma once

#include "compiler/stock/plan/wood_plan.hpp"
#include "compiler/stock/rack/rack_after.hpp"

namespace rodwright {

// The boards and sheets that are cut, and the offcuts that are kept, where they lie on them; of what is
// bought the offcuts alone.
RackChange change_of(const WoodPlan& plan);

}  // namespace rodwright
