// An offcut as it is written into the rack's file. Internal to compiler/stock/rack.
#pragma once

#include <string>

#include "compiler/stock/rack/rack.hpp"

namespace rodwright {

// How lengths are written: in the unit that the board was, as long as that is exact.
enum class EntryUnit : std::uint8_t { inch, millimetre };

// A map in braces on one line, but each defect on a line of its own, which `\n` divides. `thickness` is the
// text that the board had for it.
std::string entry_text(const RackBoard& offcut, const std::string& thickness, EntryUnit unit);
std::string entry_text(const RackSheet& offcut, const std::string& thickness, EntryUnit unit);

// A length above zero as parse_quantity() reads it, exact: `7-1/2 in`, `190.5mm`, `10-1/3mm`.
std::string length_text(const Rational& millimetres, EntryUnit unit);

}  // namespace rodwright
