// The arithmetic behind a value of a definition, for the maker who wants to see where a fence setting comes
// from. Private to compiler/graph/definition_*.cpp.
#pragma once

#include "compiler/graph/definition_steps.hpp"

namespace rodwright {

// The expression as it is written, with what its names and sizes are worth in their places: `cheek + 1/8"` is
// `1/4" + 1/8"`. A bare name stands for the `let` or parameter that it is defined by. Empty where that leaves
// nothing to work out. Reports nothing.
Phrase worked_out(const Syntax& expression, const TextMaker& texts);

}  // namespace rodwright
