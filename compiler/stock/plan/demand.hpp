// What has to come off the saw: blanks, leaves of books, strips of matched parts and staves of panels, as
// rectangles with the parts that each is for.
#pragma once

#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/stock/plan/wood_plan.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright {

// Pieces of one size. Their size is what PlannedPiece::size says of each.
struct Demand {
    std::string wood;  // the design's name for it
    std::string thickness_class;
    bool sheet = false;
    std::string label;  // of any of its pieces: "B", "the staves of F"
    Vector size;
    std::vector<PlannedPiece> pieces;
    bool one_face = false;             // of each of its parts one broad face alone is seen
    std::optional<std::size_t> match;  // index into Piece::matches, of parts strung together for it
};

// A panel whose staves are still to be chosen.
struct PanelDemand {
    PanelNeed need;
    std::vector<PartId> panels;  // one for each of need.count
    std::string wood;
    std::string label;
    bool one_board = false;  // all staves from one board
    bool one_face = false;   // of each stave one broad face alone is seen
};

struct Demands {
    std::vector<Demand> pieces;
    std::vector<PanelDemand> panels;
};

// The parts of the piece as what has to be sawn; `rough` is what rough_sizes() says of the parts that are in
// no match. Matched parts are strung together in their order, with a kerf between; two leaves of a book are
// one piece, thick enough to be sawn open.
Demands demands_of(const Piece& piece, const MillingData& milling, const RoughSizes& rough);

// The piece without the parts that are made already: they need no wood any more.
Piece without_made(const Piece& piece);
// The piece without the parts that a match names (but panels, which are matched board by board).
Piece without_matched(const Piece& piece);
// The parts of a match one by one, for where no board holds them together.
std::vector<Demand> taken_singly(const Piece& piece, const Match& match, const MillingData& milling);

// The staves of one panel each, of those widths (in the finished panel); from one board: strung together.
std::vector<Demand> staves_of(const PanelDemand& panel, const std::vector<Rational>& widths,
                              const MillingData& milling);

}  // namespace rodwright
