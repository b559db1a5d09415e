#include "backends/boards/board_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "backends/words.hpp"

namespace rodwright {
namespace {

std::string money_words(const WoodPlan& plan, const Rational& price) {
    return fmt::format("{:.2f} {}", price.get_d(), plan.money.empty() ? "in money" : plan.money);
}

std::string board_words(const std::string& section) {
    return section.empty() ? "board" : section;
}

std::string piece_words(const PlannedPiece& piece) {
    std::string words = piece.label;
    if (piece.leaves > 1) words += fmt::format(", to be resawn in {}", piece.leaves);
    if (piece.show_face)
        words += fmt::format(", show face {}", *piece.show_face == DefectFace::upper ? "up" : "down");
    return words;
}

std::string gives(const PlannedBoard& board, std::size_t index, const LengthStyle& style) {
    const PlanRegion& region = board.regions[index];
    switch (region.kind) {
        case PlanRegion::Kind::piece:
            return piece_words(board.pieces[*region.piece]);
        case PlanRegion::Kind::section:
            return board_words(region.name);
        case PlanRegion::Kind::offcut:
            return fmt::format("offcut {} x {}", format_length(region.area.length, style),
                               format_length(region.area.width, style));
        case PlanRegion::Kind::waste:
            return "waste";
    }
    return {};
}

std::string care_words(const PlannedCut& cut) {
    if (cut.care == CutCare::by_hand) return "by hand";
    std::string words = cut.usual_saw ? std::string() : plain_words(cut.saw);
    const char* care = cut.care == CutCare::narrow    ? "push block"
                       : cut.care == CutCare::no_stop ? "no stop"
                                                      : "";
    return words.empty() || *care == 0 ? words + care : words + ", " + care;
}

std::string counted_boards(std::size_t boards, bool sheet) {
    return counted(boards, sheet ? "sheet" : "board");
}

std::string bound_words(const PlanBound& bound) {
    std::string words = counted_boards(static_cast<std::size_t>(bound.boards), bound.sheet);
    words += bound.at_least >= bound.boards
                 ? fmt::format("; fewer cannot be enough (by {})", bound.at_least_by)
                 : fmt::format("; at least {} needed (by {})", bound.at_least, bound.at_least_by);
    if (bound.proven) return words + "; no others are worth less";
    constexpr double percent = 100;
    if (bound.over > 0)
        words += fmt::format("; within {:.0f} % of the least worth", std::ceil(bound.over.get_d() * percent));
    return words;
}

std::vector<const PlanGroup*> groups_of(const WoodPlan& plan, const std::string& wood) {
    std::vector<const PlanGroup*> groups;
    for (const PlanGroup& group : plan.groups) {
        if (group.wood == wood) groups.push_back(&group);
    }
    return groups;
}

// How much of the wood ends in the piece; empty where something is missing.
std::string yield_words(const WoodPlan& plan) {
    if (plan.used_volume <= 0 || !plan.complete()) return {};
    constexpr double percent = 100;
    const Rational share = plan.finished_volume / plan.used_volume;
    return fmt::format(
        "{:.0f} % of the wood that is used up ends in the piece; kept offcuts are not counted as used",
        share.get_d() * percent);
}

}  // namespace

std::string board_title(const PlannedBoard& board, const LengthStyle& style) {
    const std::string width = board.width == board.far_width
                                  ? format_length(board.width, style)
                                  : fmt::format("{} to {}", format_length(board.width, style),
                                                format_length(board.far_width, style));
    return fmt::format("{}: {} x {} x {}", board.name, format_length(board.length, style), width,
                       format_length(board.thickness, style));
}

std::vector<CutWords> cut_words(const PlannedBoard& board, const LengthStyle& style) {
    std::vector<CutWords> all;
    std::vector<bool> is_rest(board.regions.size(), false);
    for (const PlannedCut& cut : board.cuts) {
        CutWords words{cut.crosscut ? "crosscut" : "rip", board_words(board.regions[cut.of].name),
                       format_length(cut.setting, style), gives(board, cut.first, style), care_words(cut)};
        if (is_rest[cut.of]) words.of = "rest of " + words.of;
        if (cut.rest) {
            const PlanRegion& rest = board.regions[*cut.rest];
            is_rest[*cut.rest] = rest.name == board.regions[cut.of].name;
            const bool goes_on = rest.kind == PlanRegion::Kind::section && is_rest[*cut.rest];
            if (!goes_on) words.gives += ", left: " + gives(board, *cut.rest, style);
        }
        all.push_back(std::move(words));
    }
    return all;
}

std::string group_words(const WoodPlan& plan, const PlanGroup& group) {
    const std::size_t boards = group.boards.size();
    if (!group.complete) return counted_boards(boards, group.sheet) + ", and it is not enough";
    if (boards == 0) return "all from what is left of boards already cut";
    const auto bound = std::ranges::find(plan.bounds, group.wood, &PlanBound::wood);
    if (bound == plan.bounds.end() || groups_of(plan, group.wood).size() > 1)
        return counted_boards(boards, group.sheet);
    return bound_words(*bound);
}

std::string wood_words_before(const WoodPlan& plan, const PlanGroup& group) {
    const std::vector<const PlanGroup*> groups = groups_of(plan, group.wood);
    const auto bound = std::ranges::find(plan.bounds, group.wood, &PlanBound::wood);
    if (bound == plan.bounds.end() || groups.size() < 2 || groups.front() != &group) return {};
    return fmt::format("{}, all thicknesses: {}", bound->title, bound_words(*bound));
}

std::string purchase_words(const WoodPlan& plan, const Purchase& purchase) {
    std::string words = fmt::format("{} x {}", purchase.count, purchase.text);
    if (purchase.board_feet > 0) words += fmt::format(": {:.1f} board feet", purchase.board_feet.get_d());
    return words + fmt::format(", {}", money_words(plan, purchase.price));
}

std::string added_words(const LumberByTheFoot& lumber) {
    constexpr double percent = 100;
    return fmt::format("{:.1f} board feet and {:.0f} % added", lumber.net.get_d(),
                       lumber.added.get_d() * percent);
}

std::string by_the_foot_words(const WoodPlan& plan, const LumberByTheFoot& lumber) {
    return fmt::format("{}: {}: {:.1f} board feet, {}", lumber.text, added_words(lumber),
                       lumber.board_feet.get_d(), money_words(plan, lumber.price));
}

std::vector<std::string> plan_summary(const WoodPlan& plan) {
    const auto bought = static_cast<std::size_t>(
        std::ranges::count_if(plan.boards, [](const PlannedBoard& board) { return !board.offer.empty(); }));
    std::vector<std::string> lines = {counted(plan.boards.size() - bought, "board") + " of the rack " +
                                      (plan.boards.size() - bought == 1 ? "is" : "are") + " cut"};
    Rational total = 0;
    for (const Purchase& purchase : plan.purchases) total += purchase.price;
    if (bought > 0) lines.push_back(counted(bought, "board") + " to buy, for " + money_words(plan, total));
    int missing = 0;
    for (const MissingPiece& each : plan.missing) missing += each.count;
    if (missing > 0) {
        lines.push_back("The wood is not enough: " + counted(static_cast<std::size_t>(missing), "piece") +
                        " found no board; the buying list says what would help");
    }
    return lines;
}

std::vector<std::string> plan_remarks(const WoodPlan& plan, const LengthStyle& style) {
    std::vector<std::string> remarks;
    for (const MissingPiece& missing : plan.missing) {
        remarks.push_back(fmt::format("Missing: {} of {}, {} x {} ({})", missing.count, missing.label,
                                      format_length(missing.size[Axis::wide], style),
                                      format_length(missing.size[Axis::deep], style), missing.group));
    }
    if (!plan.remedies.empty())
        remarks.push_back("It would be enough with: " + joined(plan.remedies, "; or "));
    Rational total = 0;
    for (const Purchase& purchase : plan.purchases) total += purchase.price;
    if (!plan.purchases.empty()) {
        remarks.push_back(fmt::format(
            "To buy for {} in all. Boards, sheets and rods are those that this plan cuts, their waste is "
            "in them and nothing is added; random widths are planned as the narrowest that may come.",
            money_words(plan, total)));
    }
    if (!plan.by_the_foot.empty()) {
        remarks.push_back(
            "Where boards cannot be picked but come in random widths, the lumber by the board foot is "
            "bought in their place: what its rough pieces need, with the waste added on top.");
    }
    for (const std::string& note : plan.notes) remarks.push_back(capitalised(note) + ".");
    if (const std::string words = yield_words(plan); !words.empty())
        remarks.push_back(capitalised(words) + ".");
    return remarks;
}

}  // namespace rodwright
