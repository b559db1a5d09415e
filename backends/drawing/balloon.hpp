// Letters in circles outside a view, with leaders to what they name (ISO 6433: larger than the dimension
// figures, outside the outline, lined up).
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/dimension.hpp"
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

// Where balloons are lined up: in a column (upright) at x = `at` or a row (across) at y = `at`, between `low`
// and `high`.
struct BalloonLine {
    Run run = Run::upright;
    double at = 0;
    double low = 0;
    double high = 0;
};
// How many have room on it.
std::size_t capacity(const BalloonLine& line);

// Ordered so that leaders do not cross. Each letter leads to the sheet of that part.
void draw_callouts(Sheet& sheet, std::vector<Callout> callouts, const BalloonLine& line, const Fonts& fonts);

}  // namespace rodwright::drawing
