// Rounded and chamfered edges as an end view shows them: their size, at the end of a leader.
#pragma once

#include "backends/packet/parts/part_view.hpp"

namespace rodwright::packet {

// One size of easing along the line of sight, told at one of the corners of the body.
struct EasingNote {
    std::string text;  // "4 × R 1/8\"", "2 × 1/8\" × 45°": in one unit, to be short
    Rational size;
    bool round = false;
    bool right = false;  // which corner
    bool upper = false;
};

// Each size once, at most one for each corner: at a left one where it has one that is free.
std::vector<EasingNote> easing_notes(const PartView& part, const drawing::AxisView& end);

// What the notes take of the paper under the body, and on one side of it, mm.
double easing_depth(const std::vector<EasingNote>& notes);
double easing_strip(const std::vector<EasingNote>& notes, bool right, const drawing::Fonts& fonts);

// Around the body, where the sheet has room.
void draw_easing_notes(drawing::Sheet& sheet, const std::vector<EasingNote>& notes, const drawing::Rect& body,
                       double factor, const drawing::Rect& room, const drawing::Fonts& fonts);

}  // namespace rodwright::packet
