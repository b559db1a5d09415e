// The order of work in each format it is written in. All end their last line.
#pragma once

#include <string>

#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

// CommonMark with task lists: numbered steps with a box to tick, under a heading for each stage; the set-ups
// as a table.
std::string steps_markdown(const Piece& piece, const WorkPlan& plan);
// Every step with all of its reasons, set-ups and glue-ups; steps and set-ups count from 1. Times in seconds.
std::string steps_json(const Piece& piece, const WorkPlan& plan);

}  // namespace rodwright
