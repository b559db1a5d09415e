// Board measure, as the hardwood trade counts it.
#pragma once

#include "compiler/quantity/rational.hpp"

namespace rodwright {

// Thickness x width in inches x length in feet / 12; a rough thickness under 1 in counts as 1.
Rational board_feet(const Rational& thickness, const Rational& width, const Rational& length);

}  // namespace rodwright
