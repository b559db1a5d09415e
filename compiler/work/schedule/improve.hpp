// Local search: a task is moved to another place of an order, along with what has to be moved with it, and
// the change is kept unless it makes the timetable worse.
#pragma once

#include "compiler/work/schedule/beam.hpp"

namespace rodwright::schedule {

Figures figures_of(const Network& network, const std::vector<std::size_t>& order);

Found improve(const Network& network, Found found, std::size_t moves);

}  // namespace rodwright::schedule
