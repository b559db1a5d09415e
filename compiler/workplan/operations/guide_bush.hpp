// Routing a pocket through the opening of a template, the router guided by a bush round its bit.
#pragma once

#include <optional>

#include "compiler/data/shop.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

// The bit of the need that runs in a bush; null where there is none, or where a grooving cutter does it too:
// that is a straight run along a fence, and nobody makes a template for it.
const ToolNeed::Alternative* template_bit(const ToolNeed& need);

// The bit's edge stays (bush - bit) / 2 from the template's: from the geometry of two circles with one
// centre.
Rational bush_offset(const Rational& bush, const Rational& bit);
// The opening for a pocket that is `pocket` across: larger by the offset on either side.
Rational opening_for(const Rational& pocket, const Rational& bush, const Rational& bit);

// How much larger than the bit a bush is at the least, 1/8 in: room for the bit and its chips inside the
// bush's wall (common practice, no source).
Rational least_clearance();
// The smallest bush of the shop that leaves that room; empty if there is none.
std::optional<Rational> bush_for(const Shop& shop, const Rational& bit, LengthUnit unit);

}  // namespace rodwright
