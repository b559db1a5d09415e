// The true optimum of a small scheduling problem, from a mixed integer programme that shares nothing with the
// scheduler.
#pragma once

#include "compiler/workplan/schedule/problem.hpp"

namespace rodwright::schedule {

struct Optimum {
    Seconds makespan = 0;
    std::size_t set_ups = 0;  // the fewest with that makespan
};

// Proved by GLPK. For problems without days, with jobs that all take some time, whose precedences are in no
// circle; takes seconds from ten jobs on.
Optimum exact_timetable(const Problem& problem);

}  // namespace rodwright::schedule
