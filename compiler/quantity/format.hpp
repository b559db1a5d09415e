// Quantities as a person reads them.
#pragma once

#include <string>

#include "compiler/quantity/quantity.hpp"

namespace rodwright {

enum class LengthUnit { inch, millimetre };

// How a piece shows its lengths: `unit in to 1/32`, `unit mm to 1/2`.
struct LengthStyle {
    LengthUnit unit = LengthUnit::inch;
    Rational step = ratio(1, 32);  // nearest multiple shown, in the unit
    bool unit_sign = true;         // 1 5/8" or 1 5/8; millimetres: 19 mm or 19
};

struct Shown {
    std::string text;
    bool exact = true;  // false: the text is the nearest step, not the value itself
};

// A length in millimetres as tape fractions in lowest terms (`1 5/8"`, `3/4"`, `0"`, `-1/8"`), or decimal
// millimetres. Halves round away from zero. `style.step` is above zero.
Shown show_length(const Rational& millimetres, const LengthStyle& style);

// The same with a leading `~` where it is rounded.
std::string format_length(const Rational& millimetres, const LengthStyle& style);

// For what must not be shown as nothing: a length that would come out as zero and is not is written exactly,
// as `1/1000"` or `0.004 mm`; rounded to a millionth where it takes more than that to write.
std::string format_small(const Rational& millimetres, const LengthStyle& style);

// Any quantity: lengths by `style`, angles as `14°`, slopes as `1:8`, percentages `8%`, forces in lbf or N
// and masses in lb or kg after the style's unit, times as `30 min`, money `12.50 USD`, areas and volumes in
// the style's unit, plain numbers as fractions or decimals.
std::string format_quantity(const Quantity& quantity, const LengthStyle& style);

}  // namespace rodwright
