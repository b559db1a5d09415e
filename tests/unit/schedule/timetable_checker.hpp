// What a timetable has to keep to, looked at without any of the scheduler's own code.
#pragma once

#include <string>
#include <vector>

#include "compiler/workplan/schedule/schedule.hpp"

namespace rodwright::schedule {

// A sentence for each rule that is broken; the sums of the timetable are worked out anew too.
std::vector<std::string> check_timetable(const Problem& problem, const Timetable& timetable);

}  // namespace rodwright::schedule
