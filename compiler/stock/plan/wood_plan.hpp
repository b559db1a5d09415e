// Which board or sheet gives which part, in which cuts, what is left of it, and what has to be bought: the
// value that planning ends in. The packet, the cut list and `rack after` read it.
//
// Lengths are millimetres, exact. Places on a board are measured from its first end and its first edge; its
// length runs along the grain, also on a sheet whose grain runs across it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "compiler/graph/piece.hpp"
#include "compiler/stock/rack/rack.hpp"
#include "compiler/stock/rough/rough.hpp"

namespace rodwright {

struct PlanArea {
    Rational from_end;
    Rational from_edge;
    Rational length;
    Rational width;

    bool overlaps(const PlanArea& o) const {
        return from_end < o.from_end + o.length && o.from_end < from_end + length &&
               from_edge < o.from_edge + o.width && o.from_edge < from_edge + width;
    }
    friend bool operator==(const PlanArea&, const PlanArea&) = default;
};

// Wood that is for no part; where one face alone has it, for none that shows that face.
struct PlanDefect {
    PlanArea area;
    DefectFace face = DefectFace::both;
};

// A part, or one of the staves that a panel is glued from.
struct PlannedPart {
    PartId part = PartId::none;
    int stave = 0;  // from one; 0: the whole part
    int staves = 0;
};

// What one piece off the saw becomes. It may be cut apart after milling, or sawn open on edge into leaves.
struct PlannedPiece {
    std::string label;               // "B", "B+B", "F 2 of 4" of a panel's staves
    std::vector<PlannedPart> parts;  // from its first end on; of one leaf after another
    int leaves = 1;
    Vector size;                          // as sawn; thickness: the least that the board must have
    std::optional<DefectFace> show_face;  // the board's, where the other one has a defect there
};

// What there is of a board at some moment of cutting it up. The first region is the whole board.
struct PlanRegion {
    enum class Kind : std::uint8_t { section, piece, offcut, waste };
    Kind kind = Kind::waste;
    PlanArea area;
    std::string name;                  // of a section: "a"; what is left of one keeps its name
    std::optional<std::size_t> piece;  // index into PlannedBoard::pieces
};

// What a cut asks for besides its setting.
enum class CutCare : std::uint8_t {
    none,
    narrow,   // what runs between blade and fence is narrow: push block
    no_stop,  // so short a piece would lie loose between blade and stop, and jam: cut to a mark
    by_hand,  // what is cut is too small for any machine to hold: hand saw
};

// A cut from edge to edge, in the order of the work. It takes a kerf behind `at`.
struct PlannedCut {
    std::size_t of = 0;     // the region that is cut; indices into PlannedBoard::regions
    bool crosscut = false;  // across the grain; otherwise a rip
    Rational at;            // of a crosscut from the board's first end, of a rip from its first edge
    Rational setting;       // how long or wide the piece in front of the cut becomes
    std::size_t first = 0;
    std::optional<std::size_t> rest;  // nothing: dust
    std::string saw;                  // key of MillingData::kerfs
    bool usual_saw = true;            // the one that the shop makes such cuts with
    CutCare care = CutCare::none;
};

struct PlannedBoard {
    std::string name;     // "A1", "A1 (2 of 3)", "to buy 1"
    std::string origin;   // name in the rack; empty: to be bought
    std::string species;  // key of woods.yaml
    std::string cut;      // as in the rack
    bool sheet = false;
    bool grain_across = false;  // of a sheet: its grain runs along its width, so plan and rack are turned
    bool no_grain = false;      // of a sheet: parts may be turned on it
    Rational length;            // whole, checks included
    Rational width;             // at its widest
    Rational far_width;         // at the other end; of a board with parallel edges the same
    Rational thickness;
    Rational checks;  // length that is lost at the first end, at the other, and width along the far edge
    Rational far_checks;
    Rational sapwood;
    Rational trim;  // taken off each edge of a sheet
    std::vector<PlanDefect> defects;
    std::vector<PlannedPiece> pieces;
    std::vector<PlanRegion> regions;
    std::vector<PlannedCut> cuts;
    Rational crosscut_kerf;
    Rational rip_kerf;
    std::optional<Rational> price;
    std::string offer;    // of one to be bought: what the buying list calls it
    std::string lumber;   // likewise, without its width and length; empty for sheets
    Rational board_feet;  // likewise; 0 for sheets
};

// Boards that were planned together: of one wood, for parts of one thickness.
struct PlanGroup {
    std::string wood;   // the design's name for it
    std::string title;  // "white ash, quartered, 4/4"
    bool sheet = false;
    Rational least_thickness;
    std::vector<std::size_t> boards;  // indices into WoodPlan::boards
    bool complete = false;            // all its pieces found a place
};

// How good the plan for a wood is, all its groups together, against any other for the same blanks and panels.
struct PlanBound {
    std::string wood;   // the design's name for it
    std::string title;  // "white ash, quartered"
    bool sheet = false;
    int boards = 0;           // that are cut
    int at_least = 0;         // so many are needed in any plan, whatever the staves
    std::string at_least_by;  // how that was found
    bool proven = false;      // no plan spends less, or uses boards of less worth
    Rational over;            // else: at most this share above the least, 0.04 is 4 %
};

// Parts that no board holds.
struct MissingPiece {
    std::string label;
    int count = 0;
    Vector size;
    std::string group;  // PlanGroup::title
};

// A board, a sheet or a rod that the plan cuts.
struct Purchase {
    std::string text;  // `white ash, 4/4, at least 6" wide, 8' long`
    int count = 0;
    Rational board_feet;                // of all; 0 for sheets and rods
    Rational price;                     // of all
    std::vector<std::string> supplies;  // what rods are cut up into: the notes of joints' supplies
};

// The same lumber where a dealer sends random widths: waste is added to what the pieces need,
// board_feet = net x (1 + added).
struct LumberByTheFoot {
    std::string text;  // `white ash, quartered, 1" rough`
    Rational net;      // board feet of the rough pieces
    Rational added;    // 0.3 is 30 %
    Rational board_feet;
    Rational price;
};

struct WoodPlan {
    RoughSizes rough;      // of all parts that are in no match
    bool planned = false;  // there is a rack; otherwise all below is empty
    std::string money;
    std::vector<PlannedBoard> boards;
    std::vector<PlanGroup> groups;
    std::vector<PlanBound> bounds;  // of woods of which nothing is missing
    std::vector<MissingPiece> missing;
    std::vector<std::string> remedies;  // the smallest changes after which nothing is missing
    std::vector<Purchase> purchases;
    std::vector<LumberByTheFoot> by_the_foot;  // in place of the boards among the purchases
    std::vector<std::string> notes;
    Rational finished_volume;  // of all parts, as boxes
    Rational used_volume;      // of all boards that are cut, offcuts that are kept taken off

    bool complete() const { return missing.empty(); }
};

}  // namespace rodwright
