// Lengths as figures on a drawing, in one unit or in both.
#pragma once

#include <optional>
#include <string>

#include "compiler/quantity/format.hpp"

namespace rodwright::packet {

struct FigureStyle {
    LengthStyle own;
    std::optional<LengthStyle> beside;  // the other unit, in brackets behind the first

    // One unit alone.
    FigureStyle(LengthStyle style) : own(std::move(style)) {}
    FigureStyle(LengthStyle style, std::optional<LengthStyle> other)
        : own(std::move(style)), beside(std::move(other)) {}
};

// How lengths are shown in that unit where the design does not say: to 1/32 in or 0.1 mm (each about the
// other's half; common practice, no source).
LengthStyle usual_style(LengthUnit unit);
LengthUnit other_unit(LengthUnit unit);

// A length: no unit sign for millimetres, as ISO 129-1 asks; `~` where it is rounded. In both units
// `42" [1066.8]`, the custom of dual dimensions; nothing stands beside a zero.
std::string figure(const Rational& millimetres, const FigureStyle& style);

// Any quantity with its unit, `150 lbf [667 N]` where the units differ.
std::string quantity_figure(const Quantity& quantity, const FigureStyle& style);

}  // namespace rodwright::packet
