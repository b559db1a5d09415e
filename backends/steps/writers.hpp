// The order of work in each format it is written in. All end their last line.
#pragma once

#include <string>

#include "backends/steps/step_list.hpp"

namespace rodwright {

// CommonMark with task lists: numbered steps with a box to tick, under a heading for each stage.
std::string steps_markdown(const StepList& list);
// Every step with all of its reasons; `after` counts steps from 1, like `number`.
std::string steps_json(const StepList& list);

}  // namespace rodwright
