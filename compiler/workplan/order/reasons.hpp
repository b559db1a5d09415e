// Which reasons stand beside an operation in the list.
#pragma once

#include <vector>

#include "compiler/workplan/order/work_order.hpp"

namespace rodwright {

// By item: all its reasons, by the position of what it comes after. Shown are those that someone who reads
// the list in order would not see for himself: a rule's the first time it matters, and a definition's where
// one part of a joint waits for the other.
std::vector<std::vector<WorkReason>> reasons_of(const std::vector<WorkItem>& items,
                                                const std::vector<OrderEdge>& edges,
                                                const std::vector<std::size_t>& position);

}  // namespace rodwright
