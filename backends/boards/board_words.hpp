// What is said of a wood plan, in the words that the text, the drawings and the steps share.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compiler/stock/plan/wood_plan.hpp"

namespace rodwright {

// How lists of cuts are read.
inline constexpr std::string_view how_cuts_are_read =
    "Cuts in their order: what is cut, how far the fence or stop stands from the edge or end that lies\n"
    "against it, and what comes off. Lengths run along the grain and are rough. No stop: cut to a mark,\n"
    "so short a piece jams. What rocks on table or fence jams too: plane it straight first, the\n"
    "allowances are for that.";

// `A1: 8/4 x 6" x 96"`, `new 1 ...`
std::string board_title(const PlannedBoard& board, const LengthStyle& style);

// One cut as the maker makes it: `crosscut at 30 1/2"`, what is cut and what comes of it.
struct CutWords {
    std::string what;     // "crosscut", "rip"
    std::string of;       // "the board", "a", "the rest of a"
    std::string setting;  // `30 1/2"`
    std::string gives;    // "B", "a", "B; offcut left"
    std::string care;     // "by hand", "circular saw", "push block", "no stop"; mostly empty
};
std::vector<CutWords> cut_words(const PlannedBoard& board, const LengthStyle& style);

// `3 boards`, and how sure that is where the wood has no other groups.
std::string group_words(const WoodPlan& plan, const PlanGroup& group);
// Of the first of several groups of a wood: the wood and how good the plan for all of them is. Else empty.
std::string wood_words_before(const WoodPlan& plan, const PlanGroup& group);

// What is missing and what would mend it, what is bought and by which rule, and the plan's other notes.
std::vector<std::string> plan_remarks(const WoodPlan& plan, const LengthStyle& style);

// What the plan comes to, in a few sentences: boards cut, what to buy, what is missing.
std::vector<std::string> plan_summary(const WoodPlan& plan);

// `2 x white ash, 4/4 ...: 11.5 board feet, 73.60 crowns`
std::string purchase_words(const WoodPlan& plan, const Purchase& purchase);

// `white ash, 1" rough: 12.0 board feet and 30 % added: 15.6 board feet, 99.84 crowns`, and the sum in it.
std::string by_the_foot_words(const WoodPlan& plan, const LumberByTheFoot& lumber);
std::string added_words(const LumberByTheFoot& lumber);

}  // namespace rodwright
