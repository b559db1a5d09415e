// Why a group does not come apart, and what would let it.
#pragma once

#include "compiler/assembly/assembly_facts.hpp"
#include "compiler/assembly/shared_wood.hpp"

namespace rodwright {

// The fewest of a locked group, going by one part after the other, that lock each other without the rest.
PartNumbers smallest_lock(const Blocking& blocking, const PartNumbers& locked);

// Of each group of the piece that does not come apart. One with parts that stand in one another is left out:
// they cannot be parted, whatever else there is.
std::vector<PartNumbers> locks_of(const AssemblyFacts& facts, const std::vector<SharedWood>& shared);

// A joint that could be open where it is closed: then the one part would go past the other that way.
struct Opening {
    std::size_t goes = 0;
    std::size_t stays = 0;
    Direction way;
    std::size_t joint = 0;  // of the piece's joints
};

// Both ends of every joint that slides across the face it is in.
std::vector<Opening> openings(const Piece& piece);

// Those of which one alone would let the whole group come apart.
std::vector<Opening> releases(const Blocking& blocking, const PartNumbers& locked,
                              const std::vector<Opening>& openings);

}  // namespace rodwright
