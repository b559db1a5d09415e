// The pockets in a part, and the wood that is left beside them.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "compiler/assembly/blocking.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

// What is taken out of the part, as the box around it, in the piece's axes, mm; no further than the part is
// seen.
struct Pocket {
    const Feature* feature = nullptr;
    Bounds box;
    std::array<bool, 6> open{};  // by Face: it comes out there on purpose
    Face entry{};                // the open face with the largest opening

    double size(Axis axis) const {
        const auto i = static_cast<std::size_t>(axis);
        return box.high[i] - box.low[i];
    }
    bool holds(const Point3& point) const;
};

// Of one part of the piece. Those that come out nowhere, as a hole for a hidden pin might, are left out.
std::vector<Pocket> pockets_of(const Piece& piece, const Part& part);

// Whether both are of one joint or shape, as the parts of a haunched mortise are.
bool same_work(const Feature& a, const Feature& b);

// The least wood between a side of a pocket and what comes next that way.
struct Wall {
    const Pocket* pocket = nullptr;
    Face side{};
    double thick = 0;                // 0: none
    const Pocket* beyond = nullptr;  // the pocket that comes next; null: the outside
};

// Of all sides that are not open, in the order of pockets and faces. Not of sides that lie in another pocket
// of the same work or with the same entry: a countersink is over its hole, and grooves cross.
std::vector<Wall> walls_of(const std::vector<Pocket>& pockets, const Mesh& mesh);

}  // namespace rodwright
