// With which machine and cutter of the shop a step of a joint or shape is done.
#pragma once

#include "compiler/data/shop.hpp"
#include "compiler/workplan/machines/machine_limits.hpp"
#include "compiler/workplan/work_plan.hpp"

namespace rodwright {

// A step, and what it is done to.
struct ToolingJob {
    const Work& work;
    const StepTemplate& step;
    Span where;       // the line of the design that asks for it
    AskedWork asked;  // the parts; settings and cutter are the step's
};

// Sets the operation's machine and cutter. Where the shop has not got what the definition asks for, or its
// machine does not take the work, the nearest other way takes its place, a line of text says how, and
// Code::no_machine, no_cutter, beyond_machine or too_fast says so. What is too small to hold
// (Code::hard_to_hold) stays at its machine, with a line that says how. Returns what the machine was held
// against.
std::vector<MachineLimit> choose_tooling(const Piece& piece, Operation& operation, ToolingJob job,
                                         const Shop& shop, Diagnostics& diagnostics);

}  // namespace rodwright
