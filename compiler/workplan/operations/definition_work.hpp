// The work of joints and shapes, as their definitions have it. What closes a joint belongs to the glue-ups,
// and is left out here.
#pragma once

#include "compiler/workplan/operations/collect.hpp"

namespace rodwright {

std::vector<WorkItem> definition_work(const Piece& piece, const WorkData& data, Diagnostics& diagnostics);

// Whether a step of that name puts a joint together in a glue-up: `glue` and `close`.
bool closes_joint(const std::string& step);

}  // namespace rodwright
