// Which parts general work is done to.
#pragma once

#include "compiler/workplan/operations/work_item.hpp"

namespace rodwright {

PartSet parts_for(const Piece& piece, AppliesTo applies);

// The set's parts in ascending order, and by kind.
std::vector<PartId> part_list(const PartSet& parts);
std::vector<WorkedKind> kinds_of(const Piece& piece, const PartSet& parts);

}  // namespace rodwright
