// Bodies of a definition, in the frame of the place. Private to compiler/graph/definition_*.cpp.
#pragma once

#include <optional>
#include <vector>

#include "compiler/graph/definition_use.hpp"

namespace rodwright {

// A `body` node: the call, moved, turned and repeated as it says. Empty if it cannot be (reported).
std::vector<Body> definition_bodies(const Syntax& body, MemberForm form, Scope& scope, Evaluator& evaluator);

// `thickwise`, `-widthwise`, `lengthwise`, `inward` in frame axes; reports anything else.
std::optional<Direction> direction(const Syntax& expression, MemberForm form, Scope& scope,
                                   Evaluator& evaluator);

// The word behind `hold`; reports one that is no fastener.
std::optional<FastenerForm> fastener_form(const Syntax& word, Evaluator& evaluator);

}  // namespace rodwright
