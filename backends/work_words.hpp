// The order of work as the text backends write it.
#pragma once

#include <string>
#include <vector>

#include "backends/words.hpp"
#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

// "Mortise and tenon: cut mortise"
std::string operation_title(const Operation& operation);
// "A leg x 2", "B rail x 1"; or only "all parts"
std::vector<std::string> operation_parts(const Piece& piece, const Operation& operation);
// "straight bit 1/4", reach 1""; empty if there is none
std::string cutter_words(const std::optional<ToolNeed::Alternative>& cutter, const LengthStyle& style);
// "height 1/4", stop 1-1/8""
std::string settings_words(const std::vector<StepSetting>& settings, const LengthStyle& style);
// "mortiser with chisel 1/4": fence 7/16", depth 15/16""; empty for work by hand
std::string machine_words(const std::string& machine, const std::optional<ToolNeed::Alternative>& cutter,
                          const std::vector<StepSetting>& settings, const LengthStyle& style);
// With the set-up, where one is made for it.
Seconds time_at_work(const Operation& operation);
// "about 25 min; then leave it 24 h"
std::string time_words(const Operation& operation);
// The sums at the head of the list, a sentence each.
std::vector<std::string> sums_words(const WorkPlan& plan);
// The settings, or where there are none what it is for: "rough crosscut".
std::string set_up_words(const WorkPlan& plan, const SetUp& set_up, const LengthStyle& style);
// "fence 7/16" = 3/16" + (3/4" - 1/4") / 2", for each setting that is worked out.
std::vector<std::string> arithmetic_words(const std::vector<StepSetting>& settings, const LengthStyle& style);
// Whether it is a glue-up of which the motions are known.
bool has_picture(const WorkPlan& plan, const Operation& operation);
// A stage, the first time it is come to with why now, later as a continuation.
std::string stage_heading(const WorkPlan& plan, std::size_t operation);

}  // namespace rodwright
