// What a STEP file says beside the shapes: names, colours, and the header.
#pragma once

#include <XSControl_WorkSession.hxx>

#include "compiler/solid/occt/step/tree.hpp"

namespace rodwright::occt {

// All three write into the session that `tree` was transferred in.
void name_products(const XSControl_WorkSession& session, const StepModel& model, const StepTree& tree);
void colour_shapes(const Handle(XSControl_WorkSession) & session, const StepModel& model,
                   const StepTree& tree);
void fill_header(const XSControl_WorkSession& session, const StepModel& model);

}  // namespace rodwright::occt
