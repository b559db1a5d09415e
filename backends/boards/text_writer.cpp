#include <fmt/format.h>

#include "backends/boards/board_words.hpp"
#include "backends/boards/writers.hpp"
#include "backends/words.hpp"

namespace rodwright {
namespace {

std::string board_text(const PlannedBoard& board, const LengthStyle& style) {
    std::string text = "\n  " + board_title(board, style) + "\n";
    std::size_t number = 0;
    for (const CutWords& words : cut_words(board, style)) {
        text += fmt::format("  {:>3}  {:<9}{:<14}{:>11}  {}{}\n", ++number, words.what, words.of,
                            words.setting, words.gives, words.care.empty() ? "" : "; " + words.care);
    }
    if (board.cuts.empty()) text += "       as it is\n";
    return text;
}

}  // namespace

std::string boards_text(const Piece& piece, const WoodPlan& plan) {
    std::string text = piece.name + "\n" + std::string(character_count(piece.name), '=') + "\n\n";
    text += fmt::format("{}\n", how_cuts_are_read);
    for (const PlanGroup& group : plan.groups) {
        const std::string before = wood_words_before(plan, group);
        if (!before.empty()) text += fmt::format("\n{}\n", before);
        text += fmt::format("\n{}: {}\n", group.title, group_words(plan, group));
        for (const std::size_t board : group.boards) text += board_text(plan.boards[board], piece.style);
    }
    if (!plan.purchases.empty()) text += "\nto buy\n\n";
    for (const Purchase& purchase : plan.purchases) text += "  " + purchase_words(plan, purchase) + "\n";
    if (!plan.by_the_foot.empty()) text += "\nor, by the board foot in random widths\n\n";
    for (const LumberByTheFoot& lumber : plan.by_the_foot)
        text += "  " + by_the_foot_words(plan, lumber) + "\n";
    const std::vector<std::string> remarks = plan_remarks(plan, piece.style);
    if (!remarks.empty()) text += "\n";
    for (const std::string& remark : remarks) text += remark + "\n";
    return text;
}

}  // namespace rodwright
