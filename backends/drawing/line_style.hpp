// How each kind of line is drawn, after ISO 128-2 with the line group 0.5/0.25: wide lines are twice as wide
// as narrow ones, dashes are 12 and gaps 3 line widths, long dashes 24 (shop-practice: read at second hand;
// the dash lengths from memory of the standard).
#pragma once

#include <string_view>
#include <vector>

#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

inline constexpr double wide_line = 0.5;     // mm
inline constexpr double narrow_line = 0.25;  // mm

struct LineStyle {
    double width = narrow_line;  // mm
    std::vector<double> dashes;  // mm, dash and gap in turn; empty: continuous
    Colour colour = black;
};

const LineStyle& line_style(LineRole role);

// "cutting-plane", for formats that name what a line is for.
std::string_view name_of(LineRole role);

}  // namespace rodwright::drawing
