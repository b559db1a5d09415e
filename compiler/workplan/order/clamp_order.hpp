// Glue-ups that would need more clamps together than the shop has.
#pragma once

#include "compiler/data/shop.hpp"
#include "compiler/workplan/order/work_order.hpp"

namespace rodwright {

// Of glue-ups that have no part in common, the later one waits until the clamps are off an earlier one, as
// far as it has to for there to be enough. Nothing where the shop does not say what clamps it has.
void add_clamp_order(const std::vector<WorkItem>& items, const std::vector<GlueUp>& glue_ups,
                     const Shop& shop, std::vector<OrderEdge>& edges);

}  // namespace rodwright
