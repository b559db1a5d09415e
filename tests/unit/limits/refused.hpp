// What a design that passes a limit must be told.
#pragma once

#include <string>

#include "compiler/diagnostics/diagnostic.hpp"
#include "tests/support/design.hpp"

namespace rodwright::testing {

std::string repeated(const std::string& text, std::size_t times);

// The first of the diagnostics with that code, as `line:column message`; fails the test if there is none.
std::string first_of(Code code, const Diagnostics& diagnostics, const SourceManager& sources);

// The same for the limits of a design, which have a code of their own.
std::string passed_limit(const CompiledDesign& design);

// Six faces for what has none: it lies in a corner of the piece.
inline const std::string in_corner =
    "left = piece.left; wide = 10mm; front = piece.front; deep = 10mm; bottom = piece.bottom; tall = 10mm";

}  // namespace rodwright::testing
