// The cut list as a value: what to cut, of which wood, in which final size. Writers and the packet read it.
//
// Sizes are millimetres. Length runs along the grain and is overall: it includes tenons and whatever else
// joints leave beyond the visible body.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/graph/piece.hpp"
#include "compiler/stock/plan/wood_plan.hpp"

namespace rodwright {

// What is sawn for a part, before milling.
struct RoughCut {
    Vector size;                  // of panels: as glued up, before trimming
    std::string thickness_class;  // "4/4"; empty: none
    std::size_t parts = 1;        // that come out of it
    bool panel = false;
};

struct CutRow {
    KindId kind = KindId::none;
    std::string letter;
    std::string name;  // as the design writes it: "side_apron"
    std::size_t count = 0;
    Vector size;                              // overall length, width, thickness
    std::optional<Rational> shoulder_length;  // visible length, where joints make the part longer
    std::optional<RoughCut> rough;            // empty for sheet goods and where no wood is planned
    std::vector<std::string> boards;          // names of those that its parts come from
    std::vector<std::string> notes;
};

// Parts that come out of the same boards.
struct CutGroup {
    std::string wood;   // the design's name for it; empty: not chosen
    std::string words;  // "white ash, quartered"
    bool sheet = false;
    Rational thickness;
    std::vector<CutRow> rows;  // in the order of the kinds
};

struct HardwareRow {
    std::string name;  // "wood_screw"
    std::string note;  // "number 8, 1-1/4 in long"
    Rational count;    // for the whole piece
};

struct CutList {
    std::string title;
    LengthStyle style;
    std::vector<CutGroup> groups;  // woods in the design's order, thickest first
    std::vector<HardwareRow> hardware;
    std::size_t parts = 0;
    std::size_t kinds = 0;
    bool has_rough = false;   // some row has a rough size
    bool has_boards = false;  // some row has boards
    bool rounded = false;     // some size that is shown with that style is not exact
};

// Without a plan there are no rough sizes and no boards.
CutList make_cut_list(const Piece& piece, const WoodPlan* wood = nullptr);

// `white ash, quartered, 3/4" thick`
std::string group_title(const CutGroup& group, const LengthStyle& style);

}  // namespace rodwright
