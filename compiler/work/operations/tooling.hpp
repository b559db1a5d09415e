// With which machine and cutter of the shop a step of a joint or shape is done.
#pragma once

#include "compiler/data/shop.hpp"
#include "compiler/work/work_plan.hpp"

namespace rodwright {

// Sets the operation's machine and cutter. Where the shop has not got what the definition asks for, the
// nearest other way takes its place, a line of text says how, and Code::no_machine or Code::no_cutter says
// so.
void choose_tooling(Operation& operation, const Work& work, const StepTemplate& step, const Shop& shop,
                    const LengthStyle& style, Diagnostics& diagnostics);

}  // namespace rodwright
