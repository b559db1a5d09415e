// Conditions in bodies: which statements count, and the names that they define.
#pragma once

#include <vector>

#include "compiler/evaluate/evaluator.hpp"

namespace rodwright {

// The statements of a body that count, conditions decided, in reading order. Lets and params are defined in
// `scope` and left out; where `equations_define`, so is `name = expression`, as a parameter (the bodies of
// joints and shapes). A name that stands already is an error, but for names that `scope` was given before; in
// a design, so is a condition on a face or size.
std::vector<Syntax> active_statements(const std::vector<Syntax>& statements, Scope& scope,
                                      Evaluator& evaluator, bool equations_define);

// Whether a statement is one that only names a value, as above; its first child is the name.
bool defines_name(const Syntax& statement, bool equations_define);

// Defines what one statement defines, as above; true if it was such a statement.
bool define_name(const Syntax& statement, Scope& scope, Evaluator& evaluator, bool equations_define);

}  // namespace rodwright
