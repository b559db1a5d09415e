// Where the sheet of a part cuts it open: pockets that its views show as hidden lines only.
#pragma once

#include <string>
#include <vector>

#include "backends/packet/parts/feature_leaders.hpp"

namespace rodwright::packet {

// Square to the part's length.
struct PartCut {
    std::string letter;  // "A", of the section A-A
    Rational at;         // along the part, in the kind's frame
};

// As few as show every pocket that is open to none of the sides that the sheet's views look at; of pockets
// that are alike along the part one is shown. Holes are not among them: a leader says all of them. At most
// three cuts.
std::vector<PartCut> cuts_of(const Kind& kind, const std::vector<Direction>& looked_at);

// The planes of the cuts in the front view of the part, with the way in which the sections are seen: from the
// right.
void draw_cutting_planes(drawing::Sheet& sheet, const std::vector<PartCut>& cuts, const PartView& part,
                         const DrawnView& front, const drawing::Fonts& fonts);

// The sections side by side, hatched and named; `front` is the front view.
void draw_part_sections(drawing::Sheet& sheet, const PartView& part, const drawing::AxisView& front,
                        const std::vector<PartCut>& cuts, const drawing::Rect& room);

}  // namespace rodwright::packet
