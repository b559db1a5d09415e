// Words that findings share.
#pragma once

#include <string>
#include <string_view>

#include "compiler/geometry/geometry.hpp"
#include "compiler/quantity/format.hpp"

namespace rodwright {

// For lengths that are worked out: to 1/64 in or 0.1 mm, whatever the piece's own step.
LengthStyle computed_style(LengthStyle style);

// A length in that style: "~7/64\"".
std::string about(double millimetres, const LengthStyle& style);

// "from left to right", "from front to back", "up and down".
std::string_view along_words(Axis axis);

}  // namespace rodwright
