// Local search: a task is moved to another place of an order, along with what has to be moved with it, and
// the change is kept unless it makes the timetable worse.
#pragma once

#include "compiler/workplan/schedule/beam.hpp"

namespace rodwright::schedule {

// Makespans up to `enough` are all the same to it.
Found improve(const Network& network, Seconds enough, Found found, std::size_t moves);

}  // namespace rodwright::schedule
