// Beam search: all timetables grow at once, by one task at each level, and of those at a level only the most
// promising ones go on. Of two that have done the same tasks and differ in nothing that matters later only
// the better one is kept (dominance), so a beam that never had to drop one for lack of room has found the
// shortest makespan and the fewest set-ups for it. Handling may be a little more than it need be: orders in
// which somebody stands idle beside work are not tried.
#pragma once

#include "compiler/workplan/schedule/progress.hpp"

namespace rodwright::schedule {

struct Found {
    std::vector<std::size_t> order;  // tasks, as they are to be placed
    Figures figures;
    bool complete = false;  // nothing was dropped for lack of room
};

// Makespans up to `enough` are all the same to it.
Found search_beam(const Network& network, Seconds enough, std::size_t width);

}  // namespace rodwright::schedule
