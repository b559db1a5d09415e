// A glue-up as its step says it.
#pragma once

#include <optional>
#include <vector>

#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

// Which operation did each glue-up that is done before: its number in the list, from 1; none: it is glued
// already.
struct GluedBefore {
    const GlueUp* glue_up = nullptr;
    std::optional<std::size_t> step;
};

// A line each: what goes where, how each sort of joint is glued, the time for it, clamps, what to measure.
std::vector<Phrase> glue_up_text(const Piece& piece, const GlueUp& glue_up,
                                 const std::vector<GluedBefore>& before, const GlueFacts& glue);

}  // namespace rodwright
