// The work that every piece needs, as stdlib/data/operations.yaml has it, for the parts of this one.
#pragma once

#include "compiler/workplan/operations/collect.hpp"

namespace rodwright {

std::vector<WorkItem> general_work(const Piece& piece, const WorkData& data,
                                   const std::vector<GlueUp>& glue_ups);

}  // namespace rodwright
