// Board measure: how the trade counts and sells lumber, and what has to be bought for what is needed.
//
// A board foot is 144 cubic inches: thickness x width x length in inches over 144, or T(in) x W(in) x
// L(ft)/12. Lengths are millimetres, exact.
#pragma once

#include "compiler/stock/rack/rack.hpp"

namespace rodwright {

// Of a board of that rough thickness; less than 1 in counts as 1 in (NHLA practice). Nothing is rounded: a
// tally rounds, a plan does not.
Rational board_feet(const Rational& rough_thickness, const Rational& width, const Rational& length);

// The rough thickness that a surfaced board was, and is billed at: the thinnest that NHLA's standard
// surfacing of both faces brings to `surfaced` or more (4/4 to 13/16 in), by quarters; above 4 in as much as
// from 4 in.
Rational rough_thickness(const Rational& surfaced);

// Of one of the boards of an entry; a board that tapers counts by its middle width.
Rational board_feet(const RackBoard& board);

// How much to buy for `net`, with a share added on top: net x (1 + share). 30 % added is 23 % waste of what
// is bought.
Rational with_allowance(const Rational& net, const Rational& share);

}  // namespace rodwright
