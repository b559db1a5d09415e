// What a shop has to cut from, and what it could buy: rack.yaml, as a value.
//
// Lengths are millimetres, exact. A board lies with its length along the grain. Places on it are measured
// from its first end and its first edge, the straight one where a board tapers.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "compiler/diagnostics/source.hpp"
#include "compiler/quantity/rational.hpp"

namespace rodwright {

// The face of a board on which a defect is seen; the upper one with its first end on the left and its first
// edge in front.
enum class DefectFace : std::uint8_t { both, upper, lower };

// A knot, a split, a stain: wood that no part may hold, or that no show face may.
struct WoodDefect {
    Rational from_end;
    Rational from_edge;
    Rational length;  // along the board
    Rational width;
    std::string note;  // "knot"
    DefectFace face = DefectFace::both;
};

// Found by sighting and with a straightedge; what flattening takes away follows from them.
struct Warp {
    Rational bow;
    Rational cup;
    Rational twist;  // how far the fourth corner stands up
};

struct RackBoard {
    std::string name;     // "B3": no two boards or sheets of a rack share it
    std::string species;  // key of woods.yaml
    std::string cut;      // "flat", "rift", "quartered", or empty: not known
    bool surfaced = false;
    Rational thickness;  // as it is now
    Rational length;
    Rational width;                    // at the first end
    Rational far_width;                // at the other end
    int count = 1;                     // boards alike
    std::optional<Rational> moisture;  // percent
    std::vector<WoodDefect> defects;
    Rational checks;      // length that end checks spoil at the first end
    Rational far_checks;  // and at the other
    Rational sapwood;     // width of the sapwood along the far edge
    Warp warp;
    std::optional<Rational> price;  // of one, in the rack's money
    bool offcut = false;
    std::string from;  // of an offcut: the board that it was sawn from; may be empty
    std::string note;
    Span where;  // the entry in the file
};

enum class FaceGrain : std::uint8_t { along_length, along_width, none };

struct RackSheet {
    std::string name;
    std::string species;  // key of woods.yaml, of one that is made in sheets
    Rational thickness;   // as measured
    Rational length;
    Rational width;
    FaceGrain grain = FaceGrain::along_length;
    int count = 1;
    Rational trim;  // taken off each factory edge
    std::vector<WoodDefect> defects;
    std::optional<Rational> price;
    bool offcut = false;
    std::string from;  // of an offcut: the sheet that it was sawn from
    std::string note;
    Span where;
};

// Boards of random width that a dealer sells, by rough thickness.
struct LumberOffer {
    std::string species;
    std::string cut;
    std::vector<Rational> thicknesses;  // rough, thinnest first
    Rational narrowest;
    Rational widest;
    Rational shortest;
    Rational longest;
    Rational price;  // of a board foot
    Span where;
};

struct SheetOffer {
    std::string species;
    Rational thickness;
    Rational length;
    Rational width;
    FaceGrain grain = FaceGrain::along_length;
    Rational price;  // of a sheet
    Span where;
};

struct DowelOffer {
    std::string species;
    std::string common;  // "beech", as a list says it
    Rational diameter;
    Rational length;
    Rational price;  // of one
    Span where;
};

struct Rack {
    std::string money;              // "crowns": as prices are printed; empty: no prices
    std::vector<RackBoard> boards;  // offcuts last
    std::vector<RackSheet> sheets;
    std::vector<LumberOffer> lumber;
    std::vector<SheetOffer> sheet_offers;
    std::vector<DowelOffer> dowels;
};

}  // namespace rodwright
