// What bow, cup and twist take from a board, and how many leaves a resawn one gives.
//
// Geometry: a bow or a cup is an arc of small rise s = c^2 / (8 R) over the chord c, so that it falls with
// the square of the length or width that is left. A flat slab fits inside an evenly bent board if it is
// thinner by s. Twist is a bilinear surface; its best plane lies between +-t/4, which takes t/2.
#pragma once

#include <optional>

#include "compiler/quantity/rational.hpp"
#include "compiler/stock/rack/rack.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright {

// The warp of a piece that is cut from a warped board: `length_share` of its length, `width_share` of its
// width, both in 0 to 1.
Warp warp_of_piece(const Warp& board, const Rational& length_share, const Rational& width_share);

// The thickness that making both faces flat takes, clean-up not included: bow + cup + twist / 2.
Rational warp_loss(const Warp& warp);

// How thick a rough board has to be for a part of that finished thickness. Surfaced boards without any warp
// are used as they are, so that they need the finished thickness alone.
Rational thickness_needed(const Rational& finished, const Warp& warp, bool surfaced,
                          const MillingData& milling);

// The least number of equal pieces to cut a board into, along or across, so that a bow or cup of that rise
// falls to `room` or less in each: rise / n^2 <= room. Empty if a hundred are not enough, or `room` is none.
std::optional<int> pieces_to_flatten(const Rational& rise, const Rational& room);

// Leaves of that finished thickness from a board resawn on edge: floor((T + k) / (t + c + k)), c for cleaning
// both faces, k the kerf. At most 1000. A bookmatched pair takes two leaves that lie beside each other.
int resawn_leaves(const Rational& rough, const Rational& leaf, const MillingData& milling);

// How much of a board's length parts of one length take: `ready_ends` (0 to 2) of the board's ends are square
// already and need no cut, and every cut takes a kerf.
Rational length_with_kerfs(const Rational& length, int parts, int ready_ends, const Rational& kerf);

}  // namespace rodwright
