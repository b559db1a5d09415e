// Words of tables that stay on one line.
#pragma once

#include <string>
#include <vector>

#include "compiler/workplan/work_plan.hpp"

namespace rodwright::packet {

// "1 h 15 min": a number stays with its unit.
std::string unbroken_duration(Seconds seconds);
// What operation_parts() lists, "A handle end x 2": the letter stays with the name, and the count.
std::vector<std::string> unbroken_parts(const Piece& piece, const Operation& step);

}  // namespace rodwright::packet
