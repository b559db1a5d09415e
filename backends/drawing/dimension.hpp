// Dimensions: a length between two points, and running dimensions from one datum (ISO 129-1).
//
// Figures stand above their line and read from the bottom or from the right; of a length in two units, what
// stands in brackets is set under the line where there is no room for it beside the other. All coordinates
// are on the sheet.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/text_layout.hpp"

namespace rodwright::drawing {

inline constexpr double dimension_height = 2.5;  // of the figures
inline constexpr double first_dimension = 10;    // from the outline to the first line
// From line to line: room for a stacked fraction over one and for the other unit under the next.
inline constexpr double next_dimension = 10;

enum class Run : std::uint8_t { across, upright };

// Where a figure goes that has no room between its arrows: outside both of them, or beyond the lower or
// higher end.
enum class Overflow : std::uint8_t { outside, beyond_low, beyond_high };

// The distance of `from` and `to` along x (across) or y (upright), on a line at that y or x.
struct LengthDimension {
    Run run = Run::across;
    Point from;
    Point to;
    double line_at = 0;
    std::string text;
    Overflow overflow = Overflow::outside;
};
void draw_dimension(Sheet& sheet, const LengthDimension& dimension, const Fonts& fonts);

// How far a figure that stands beyond its dimension reaches past it.
double overflow_reach(const std::string& text, const Fonts& fonts);

// One place along a running dimension and the figure that says how far it is from the datum.
struct Station {
    double at = 0;
    std::string text;
};

// `across`: the line is below the outline (at y = `outline`), figures under it, read from the right.
// `upright`: the line is right or left of the outline (at x = `outline`), figures beside it, further out.
struct RunningDimension {
    Run run = Run::across;
    double outline = 0;
    double line_at = 0;
    double datum = 0;
    std::vector<Station> stations;  // in rising order of `at`
    double low = 0;                 // where figures may stand
    double high = 0;
};

// The least distance between two figures, and whether all of them have room between `low` and `high`.
double figure_pitch(const std::vector<Station>& stations, const Fonts& fonts);
bool fits(const RunningDimension& dimension, const Fonts& fonts);
// How far the figures reach beyond the line.
double running_depth(const std::vector<Station>& stations, const Fonts& fonts);
void draw_running(Sheet& sheet, const RunningDimension& dimension, const Fonts& fonts);

// A filled arrowhead with its point at `tip`, pointing along `direction` (of length 1).
void draw_arrowhead(Sheet& sheet, Point tip, Point direction);

// Double-headed, along the fibres, with the word beside it; from its left end on.
void draw_grain_arrow(Sheet& sheet, Point left);

}  // namespace rodwright::drawing
