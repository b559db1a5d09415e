// Times as people say them.
#pragma once

#include <string>

#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

// "40 s", "25 min", "3 h 30 min", "2 days 4 h": to the minute below an hour, to five minutes above, to the
// hour above a day.
std::string duration_words(Seconds seconds);

}  // namespace rodwright
