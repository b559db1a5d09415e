// Taking a piece apart, on paper: backwards it is an order in which it can be put together, each part or
// group brought in along one straight motion.
//
// A group can be drawn off in a direction if it takes along everything that it would meet. What is left comes
// apart as before, only easier, so it does not matter which of several groups goes first: if some choice ends
// with single parts, every choice does.
#pragma once

#include <vector>

#include "compiler/assembly/blocking.hpp"

namespace rodwright {

using PartNumbers = std::vector<std::size_t>;  // ascending

// One motion: a group goes, the rest stays.
struct Parting {
    PartNumbers goes;
    PartNumbers stays;
    Direction way;
};

struct TakenApart {
    std::vector<Parting> partings;  // in the order of taking apart
    // Groups of which no part can be moved without the others. Empty: everything comes apart.
    std::vector<PartNumbers> locked;
};

// The smallest groups that can be drawn off from the rest of the parts that way, each alone; the parts
// themselves if nothing less can.
std::vector<PartNumbers> groups_that_can_go(const Blocking& blocking, const PartNumbers& parts,
                                            Direction way);

// Of what can go, the smallest groups go first, in the way in which most of them can go; of several such ways
// the first of all_ways.
TakenApart take_apart(const Blocking& blocking);
// Some of the parts, as if the others were not there.
TakenApart take_apart(const Blocking& blocking, const PartNumbers& some);

}  // namespace rodwright
