// The cut list as a value: what to cut, of which wood, in which final size. Writers and the packet read it.
//
// Sizes are millimetres. Length runs along the grain and is overall: it includes tenons and whatever else
// joints leave beyond the visible body.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/graph/piece.hpp"

namespace rodwright {

struct CutRow {
    KindId kind = KindId::none;
    std::string letter;
    std::string name;  // as the design writes it: "side_apron"
    std::size_t count = 0;
    Vector size;                              // overall length, width, thickness
    std::optional<Rational> shoulder_length;  // visible length, where joints make the part longer
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
    bool rounded = false;  // some size that is shown with that style is not exact
};

CutList make_cut_list(const Piece& piece);

// `white ash, quartered, 3/4" thick`
std::string group_title(const CutGroup& group, const LengthStyle& style);

}  // namespace rodwright
