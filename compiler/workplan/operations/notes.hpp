// Lines that the trade adds to an operation, whatever it is.
#pragma once

#include "compiler/workplan/data/order_rules.hpp"
#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

// Each explanation where it is first wanted, in the order of work; that a setting is to be tried every time.
void add_notes(const Piece& piece, const std::vector<WorkNote>& notes, std::vector<Operation>& operations);

}  // namespace rodwright
