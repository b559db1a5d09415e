// The last touch to an order: what stands against the natural order for nothing goes back to it.
#pragma once

#include "compiler/workplan/schedule/progress.hpp"

namespace rodwright::schedule {

// Swaps neighbours that stand against the natural order, one pair after the other, wherever that leaves
// makespan (up to `enough` all are the same), set-ups and handling no worse; a list reads more easily then.
// At most a fixed number of rounds.
std::vector<std::size_t> settle(const Network& network, Seconds enough, std::vector<std::size_t> order);

}  // namespace rodwright::schedule
