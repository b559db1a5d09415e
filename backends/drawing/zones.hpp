// What stands in the border of a sheet: centring marks, and letters and figures by which a place on the sheet
// can be named ("C4").
//
// ISO 5457 (from memory of the standard): fields of 50 mm from the sheet's middle outwards, the rest in the
// corner fields; figures from left to right, letters from the top down without I and O, characters 3.5 mm
// high in a band of 5 mm; centring marks of 0.7 mm at the ends of both axes. A4 has them along the top and on
// the right only, where no hole is punched.
// ANSI/ASME Y14.1 (from memory): 17 x 11 in has fields of 4.25 by 5.5 in, figures from right to left, letters
// from the bottom up. 8.5 x 11 in has none: all of it is seen at a glance, and its margin of 0.25 in is too
// narrow for a printer to set letters in.
// The standard's centring marks reach into the drawing; ours end at the frame, so that nothing can meet them.
#pragma once

#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

struct Zones {
    enum class Sides : std::uint8_t { none, upper_and_right, all };
    Sides sides = Sides::none;
    double across = 50;             // a field's width, mm
    double upright = 50;            // and height
    bool from_lower_right = false;  // A and 1 are there, else in the upper left corner
};

inline constexpr double zone_band = 5;  // outside the frame

// How many fields a side of the sheet has between the frame's ends, `low` and `high`, for a middle and size.
std::size_t zone_count(double low, double high, double middle, double field);

// In the group `border`, outside the sheet's frame.
void draw_border(Sheet& sheet, const Zones& zones);

}  // namespace rodwright::drawing
