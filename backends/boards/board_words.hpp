// What is said of a wood plan, in the words that the text, the drawings and the steps share.
#pragma once

#include <string>
#include <vector>

#include "compiler/stock/plan/wood_plan.hpp"

namespace rodwright {

// `A1: 8/4 x 6" x 96"`, `new 1 ...`
std::string board_title(const PlannedBoard& board, const LengthStyle& style);

// One cut as the maker makes it: `crosscut at 30 1/2"`, what is cut and what comes of it.
struct CutWords {
    std::string what;     // "crosscut", "rip"
    std::string of;       // "the board", "a", "the rest of a"
    std::string setting;  // `30 1/2"`
    std::string gives;    // "B", "a", "B; offcut left"
};
std::vector<CutWords> cut_words(const PlannedBoard& board, const LengthStyle& style);

// `3 boards, no plan uses fewer (area)`, with how sure that is.
std::string bound_words(const PlanGroup& group);

// What is missing and what would mend it, what is bought and by which rule, and the plan's other notes.
std::vector<std::string> plan_remarks(const WoodPlan& plan, const LengthStyle& style);

// What the plan comes to, in a few sentences: boards cut, what to buy, what is missing.
std::vector<std::string> plan_summary(const WoodPlan& plan);

// `2 x white ash, 4/4 ...: 11.5 board feet, 73.60 crowns`
std::string purchase_words(const WoodPlan& plan, const Purchase& purchase);

}  // namespace rodwright
