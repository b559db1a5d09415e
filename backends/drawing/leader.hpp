// Notes at the end of a line that points to what they are about, set where the sheet has room for them.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/fonts.hpp"
#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

// A place that a note may point to, and the ways in which its line may leave it, each of length 1.
struct LeaderTip {
    Point at;
    std::vector<Point> ways;
};

// One note; any of its tips will do.
struct Leader {
    std::string text;
    std::vector<LeaderTip> tips;
};

// The ways of a leader: at 45, 60 and 30 degrees to the axes, so that it is told from a drawing's own
// lines.
std::vector<Point> leader_ways();
// Those of them that lead away from a corner, `right` and `up` of what it is a corner of.
std::vector<Point> leader_ways(bool right, bool up);
// A tip on a circle for each way.
std::vector<LeaderTip> tips_on_circle(Point centre, double radius);

// Draws the note as near to one of its tips as it has room: the text within `room` and on nothing that is
// drawn, its line across no text and across as few dimension lines as can be. Draws nothing and returns false
// where there is no such place.
bool draw_leader(Sheet& sheet, const Leader& leader, const Rect& room, const Fonts& fonts);

}  // namespace rodwright::drawing
