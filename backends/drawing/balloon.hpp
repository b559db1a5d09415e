// Letters in circles outside a view, with leaders to what they name (ISO 6433: larger than the dimension
// figures, outside the outline, lined up).
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/text_layout.hpp"

namespace rodwright::drawing {

inline constexpr double balloon_radius = 3.6;
inline constexpr double balloon_text = 3.0;

// A letter in a circle; a long one is made smaller.
void draw_balloon(Sheet& sheet, Point centre, const std::string& letter, const Fonts& fonts);

struct Callout {
    std::string letter;
    Point target;  // on the part; the leader ends there in a dot
};

// Balloons in a column at x, between `low` and `high`, ordered so that leaders do not cross.
void draw_callouts(Sheet& sheet, std::vector<Callout> callouts, double column_x, double low, double high,
                   const Fonts& fonts);

}  // namespace rodwright::drawing
