// Where parts that move are held by parts that do not, or not as much.
//
// A part that is held at two places changes in size between them; so does what holds it there, along the way
// through the rest of the piece that changes least. The difference is what its joints have to give.
#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

#include "compiler/check/movement/moisture.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

// What a glued joint across the grain stands, mm: what four inches of flat red oak move over four percent of
// moisture, as four inches are the most that the trade glues across the grain (common practice, no source).
inline constexpr double give = 1.5;

inline constexpr double any_room = std::numeric_limits<double>::infinity();

struct HeldSpan {
    std::size_t part = 0;
    Axis axis{};          // of the piece
    std::size_t low = 0;  // joints that hold it, at the near and at the far end; may be the same
    std::size_t high = 0;
    double span = 0;    // between the two places, mm
    double growth = 0;  // by how much more than what holds it the part grows, mm for each percent of moisture
    double room_out = 0;  // for it to grow, and
    double room_in = 0;   // to shrink; mm, both ends together
    bool fast = false;    // neither end lets it move at all, so that `give` is all the room there is
};

// By how much more than there is room for it grows or shrinks over the year, mm; below 0 if there is room.
double excess(const HeldSpan& span, const Seasons& seasons);

struct HeldSpans {
    std::vector<HeldSpan> spans;           // in the order of parts
    std::optional<std::size_t> left_from;  // the first part that was not looked at: limits::held_steps
};

// Of each part and axis the one with the largest excess, of all pairs of places where the part is held and
// grows more than what holds it; along axes in which it is known how much it moves.
HeldSpans held_spans(const Piece& piece, const Seasons& seasons);

// Room that the joint leaves its first member to move that way against the second; any_room where it does not
// hold it.
double room_of(const Piece& piece, const Joint& joint, Direction way);

}  // namespace rodwright
