// From the graph to all work that it asks for, not yet in order.
#pragma once

#include <vector>

#include "compiler/workplan/operations/work_item.hpp"
#include "compiler/workplan/work_data.hpp"

namespace rodwright {

// General work first, then joints, then shapes, each in the order of its source. Work that is the same in
// every word but the parts' names is one item for all parts that it is done to. Machines and cutters are
// those of the shop: Code::no_machine and Code::no_cutter say what it lacks and how it is done instead.
std::vector<WorkItem> collect_work(const Piece& piece, const WorkData& data,
                                   const std::vector<GlueUp>& glue_ups, Diagnostics& diagnostics);

}  // namespace rodwright
