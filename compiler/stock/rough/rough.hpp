// From finished parts to what has to be sawn out of boards: allowances, thickness classes, short parts milled
// in one length.
//
// Lengths are millimetres, exact.
#pragma once

#include <string>
#include <vector>

#include "compiler/graph/piece.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright {

// A blank is what comes off the saw as one and is flattened, jointed and thicknessed as one. It holds one
// part, or several of a kind end to end that would be too short for the machines and are cut apart after
// milling.
struct Blank {
    KindId kind = KindId::none;
    int parts = 1;                // in one blank
    int count = 1;                // blanks alike
    Vector size;                  // rough length, width and least thickness of the board that it comes from
    std::string thickness_class;  // "4/4"; empty for sheets
    std::vector<std::string> reasons;  // "length + 1 in: ..." in words a maker reads
};

// One kind after the other, in the order of the kinds. Parts of sheet goods keep their finished sizes and
// thickness. A kind whose count does not divide comes as two lines that differ in `parts`.
std::vector<Blank> rough_sizes(const Piece& piece, const MillingData& milling);

}  // namespace rodwright
