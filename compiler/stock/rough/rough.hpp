// From finished parts to what has to be sawn out of boards: allowances, thickness classes, short parts milled
// in one length, panels glued from boards.
//
// Lengths are millimetres, exact. Sizes are along the grain, across it, and through the thickness, as in a
// kind's own frame. Tapers, curves and all other shapes are cut out of the box around the part and add
// nothing; parts turned on a lathe get a larger box.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/graph/piece.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright {

// A blank is what comes off the saw as one and is flattened, jointed and thicknessed as one. It holds one
// part, or several end to end that would be too short for the machines and are cut apart after milling. Those
// are of one kind, or of a kind and its mirror image, which differ only in what is cut later.
struct Blank {
    std::vector<KindId> kinds;         // of its parts, from one end to the other; at least one
    int count = 1;                     // blanks alike
    Vector size;                       // rough length, rough width, least thickness of a flat rough board
    bool sheet = false;                // sheet goods: the finished sizes
    std::string thickness_class;       // "4/4"; empty for sheets, and for parts thicker than any class
    std::vector<std::string> reasons;  // "length: 20\" + 1/2\" at each end ...", in words a maker reads
};

// A panel to be glued from staves; how many and from which boards is for the plan to choose.
struct PanelNeed {
    KindId kind = KindId::none;
    int count = 1;  // panels
    Vector size;    // of the glued-up panel before trimming; thickness as in Blank
    std::string thickness_class;
    std::optional<int> staves;  // how many, where the design says it
    Rational narrowest;         // of a stave in the glued-up panel: as the design says, or the shop's limit
    Rational widest;            // the same
    bool alternating = false;   // every other stave turned over
    // The design does not say that it is glued, but its blank is wider than the jointer. It is among the
    // blanks too, in case there is a board wide enough and another way to flatten it.
    bool suggested = false;
    std::vector<std::string> reasons;
};

struct RoughSizes {
    std::vector<Blank> blanks;      // in the order of the first kind in each
    std::vector<PanelNeed> panels;  // in the order of the kinds; none of sheet goods
};

RoughSizes rough_sizes(const Piece& piece, const MillingData& milling);

// How many staves a panel may be made of: as the design says, or all counts that keep equal staves between
// the narrowest and the widest. Where no count does, the fewest that are not too wide. `most` is never below
// `fewest`, which is at least 1; both are at most 1000.
struct StaveCounts {
    int fewest = 1;
    int most = 1;
};
StaveCounts stave_counts(const PanelNeed& panel);

// The width to which each of `staves` equal staves is sawn: both its edges are jointed before gluing.
Rational sawn_stave_width(const PanelNeed& panel, int staves, const PanelLimits& limits);

}  // namespace rodwright
