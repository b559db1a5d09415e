// The table of units.def, for reading and showing quantities. Internal to compiler/quantity.
#pragma once

#include <span>
#include <string_view>

#include "compiler/quantity/quantity.hpp"

namespace rodwright {

// base units = (value + offset) * factor
struct Unit {
    std::string_view word;
    Dimension dimension;
    long numerator = 1;
    long denominator = 1;
    long offset_numerator = 0;
    long offset_denominator = 1;

    Rational factor() const { return ratio(numerator, denominator); }
    Rational offset() const { return ratio(offset_numerator, offset_denominator); }
};

struct Currency {
    std::string_view code;
    unsigned digits = 2;  // minor unit digits that prices are written with
};

// Every unit word, in the order of units.def.
std::span<const Unit> units();
// The unit of that word, or null.
const Unit* find_unit(std::string_view word);
// The currency of Dimension::currency, which is not 0.
const Currency& currency(std::uint8_t index);

}  // namespace rodwright
