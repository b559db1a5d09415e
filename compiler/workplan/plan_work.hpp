// The whole work of a piece: what, in which order, at which settings, when, and how it is put together.
#pragma once

#include <optional>

#include "compiler/assembly/assembly_facts.hpp"
#include "compiler/workplan/work_data.hpp"
#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

struct WorkOptions {
    std::size_t workers = 1;  // 1 or 2
    Seconds day = 8 * 3600;   // worked a day: from 1 h to 24 h, which is a clock of work that runs through
    bool in_stages = false;   // all of one stage is done before the next, and not on each part only
};

// Empty, with Code::order_cycle naming the steps and rules, if they wait for each other in a circle, or with
// Code::unknown_name if there is no such glue as the design names. What the
// shop lacks for it is a warning. `assembly` is empty where the solids could not be had or the piece does not
// come apart: there is one glue-up then.
std::optional<WorkPlan> plan_work(const Piece& piece, const WorkData& data,
                                  const std::optional<AssemblyFacts>& assembly, const WorkOptions& options,
                                  Diagnostics& diagnostics);

}  // namespace rodwright
