// Cuts round the defects of a stock piece, made before any part is put on it.
#pragma once

#include <vector>

#include "compiler/stock/cutting/guillotine/kinds.hpp"
#include "compiler/stock/cutting/random.hpp"

namespace rodwright::cutting::guillotine {

// Nodes and kinds are numbered by int, so that `none` can be less than all of them.
inline std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

// A rectangle of the piece, and what becomes of it: cut in two, free for parts, free for those that one face
// without defects is enough for, or waste with a defect in it.
struct Region {
    enum class Kind : std::uint8_t { cut, free, one_face, waste };
    static constexpr int none = -1;

    Rectangle area;
    Kind kind = Kind::free;
    Axis axis = Axis::length;  // of a cut
    int first = none;          // of a cut: indices of both regions, in the order of their places
    int second = none;
    int stage = 0;  // of a cut: stages up to its own; else of those that made it
};

// One of many ways to do that: cuts at the edges of defects, or a part's size before or behind the region's
// edge. The first region is the whole piece.
std::vector<Region> frame(const Kinds& kinds, const Stock& stock, Random& random);

}  // namespace rodwright::cutting::guillotine
