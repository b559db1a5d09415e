// Whether the shop can do the glue-ups.
#pragma once

#include "compiler/workplan/work_data.hpp"
#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

// Code::glue_too_fast where one motion closes more joints than the glue stays open for; Code::too_few_clamps
// where the shop has fewer of the length that is needed.
void check_glue_ups(const Piece& piece, const std::vector<GlueUp>& glue_ups, const WorkData& data,
                    Diagnostics& diagnostics);

}  // namespace rodwright
