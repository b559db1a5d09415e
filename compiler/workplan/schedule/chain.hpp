// The longest chain: when each task can begin at the earliest if there are as many workers and machines as
// one likes.
#pragma once

#include "compiler/workplan/schedule/network.hpp"

namespace rodwright::schedule {

struct Chain {
    std::vector<Seconds> begins;     // by task: of its work
    Seconds makespan = 0;            // with rests
    std::vector<std::size_t> tasks;  // that give it, in their order
};

Chain longest_chain(const Network& network);

// When the work of a task can begin that is ready at `ready`, with or without a set-up before it. Where both
// together are longer than a day the set-up may be made in the evening and the work begin at any time.
Seconds earliest_work(const Network& network, const Task& task, Seconds ready);

// By task: when it has to have ended at the latest for all to be done at `makespan`; before 0 where that
// cannot be.
std::vector<Seconds> latest_ends(const Network& network, Seconds makespan);

}  // namespace rodwright::schedule
