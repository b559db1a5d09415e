// What the rack's file says when a plan has been cut.
#pragma once

#include <string>
#include <vector>

#include "compiler/stock/rack/rack.hpp"

namespace rodwright {

struct RackChange {
    // Boards or sheets of an entry that are used up.
    struct Used {
        std::string name;
        int count = 1;
    };
    // What is left of one and worth keeping: a rectangle from its first end and first edge, in millimetres.
    // It lies in the board, and is a board that read_rack() takes.
    struct Left {
        std::string of;
        Rational from_end;
        Rational from_edge;
        Rational length;
        Rational width;
    };
    std::vector<Used> used;
    std::vector<Left> left;
    // What is left of boards and sheets that are bought for the plan: offcuts without a name.
    std::vector<RackBoard> left_of_bought = {};
    std::vector<RackSheet> left_of_bought_sheets = {};
};

// The text of the file that `rack` was read from, with what is used gone, or its count less, and with what is
// left: of boards under `offcuts`, of sheets under `sheets`. Names that mean nothing in `rack` are passed
// over; a text that cannot be read is given back as it is.
//
// An offcut is named after what it was sawn from, `A1-1`, with the first number that is free; one of a board
// that was bought, `new-1`. It keeps wood, cut, thickness, moisture and whether it is surfaced, and what of
// defects, end checks and sapwood lies in it. Bow and cup shrink with the square of the length or width,
// twist with both, rounded up to 1/64 in or 1/2 mm. The price stays with the board that was bought. A sheet's
// offcut has to be trimmed where a factory edge is still on it.
//
// Every other byte stays: comments, order, blank lines, quotes. With an entry go the comments within it, and
// those directly above it that are indented as it is; a comment that a blank line sets apart, or that stands
// behind the entry, stays.
std::string rack_after(const std::string& text, const Rack& rack, const RackChange& change);

}  // namespace rodwright
