// Settings of machines: work at the same machine with the same cutter at the same setting is one set-up.
#pragma once

#include <vector>

#include "compiler/workplan/operations/work_item.hpp"

namespace rodwright {

// The distinct ones, in the order of the items; `operations` are items. Sets each item's `set_up`. Values
// count as the same if they read the same in the piece's own unit. A machine without settings is set up for
// each sort of work.
std::vector<SetUp> find_set_ups(std::vector<WorkItem>& items, const LengthStyle& style);

}  // namespace rodwright
