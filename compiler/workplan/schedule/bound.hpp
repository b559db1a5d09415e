// What no timetable can do better than, by looking at what each task has before and after it.
//
// A task's head is a time before which it cannot begin, its tail one that passes at least after its end.
// Tasks of a set S keep m workers busy from the least head on, so all is not done before
//   min head(S) + (work(S) + distinct set-ups of S) / m + min tail(S).
// For one worker the largest of these is the length of Jackson's preemptive schedule (J. Carlier, "The
// one-machine sequencing problem", European Journal of Operational Research 11, 1982, 42-47); for two it is
// that of one machine twice as fast, which can do whatever two can. Heads and tails are made longer by the
// same formula first, from the predecessors and from the successors of each task.
#pragma once

#include "compiler/workplan/schedule/network.hpp"
#include "compiler/workplan/schedule/schedule.hpp"

namespace rodwright::schedule {

Bound lower_bound(const Network& network);

}  // namespace rodwright::schedule
