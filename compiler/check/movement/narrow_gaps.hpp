// Parts that stand close beside each other without touching: boards of a row, a drawer in its opening.
#pragma once

#include <cstddef>
#include <vector>

#include "compiler/assembly/blocking.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

struct NarrowGap {
    std::size_t part = 0;   // that grows into the gap
    std::size_t other = 0;  // the nearest that it would meet
    Axis axis{};
    double room = 0;    // mm; what is free at both sides of a part that stands free between others
    double growth = 0;  // that closes it, mm for each percent of moisture
};

// Gaps of up to 6 mm, as wider ones are no fit, in which a part moves. Within one assembly parts are held in
// their middle, so that half of each one's growth counts; what is of another assembly stands free, and all of
// it does. In the order of parts.
std::vector<NarrowGap> narrow_gaps(const Piece& piece, const std::vector<Mesh>& meshes);

}  // namespace rodwright
