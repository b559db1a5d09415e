#include "compiler/stock/plan/fallbacks.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright {
namespace {

// Everything that the demand could come out of, whatever else that is wanted for.
bool some_board_holds(const Demand& demand, const Planning& planning) {
    const Wood* wood = planning.piece.find_wood(demand.wood);
    if (wood == nullptr) return false;
    const StockQuery query{"",
                           *wood,
                           demand.sheet,
                           false,
                           demand.size[Axis::tall],
                           demand.size[Axis::wide],
                           demand.size[Axis::deep]};
    std::vector<std::string> unsaid;
    const auto any_holds = [&](const std::vector<Stock>& stock) {
        return std::ranges::any_of(stock, [&](const Stock& one) { return holds(one, demand); });
    };
    return any_holds(stock_at_hand(planning.rack, query, planning.milling, unsaid)) ||
           any_holds(stock_for_sale(planning.rack, query, planning.milling, planning.piece.style));
}

bool can_be_matched(const Demand& demand, const Planning& planning) {
    const bool book = planning.piece.matches[*demand.match].how == MatchKind::book;
    const bool can_be_sawn_open = demand.size[Axis::deep] <= planning.milling.saw_limits.tallest_resaw;
    return (!book || can_be_sawn_open) && some_board_holds(demand, planning);
}

Diagnostic given_up(const Demand& demand, const Planning& planning) {
    const auto shown = [&](Axis axis) { return format_length(demand.size[axis], planning.piece.style); };
    return diagnose(
               Code::match_given_up, planning.piece.matches[*demand.match].where,
               fmt::format("no board of {} thick and more holds {} by {}, which these parts take together",
                           shown(Axis::tall), shown(Axis::wide), shown(Axis::deep)))
        .hint("they are taken one by one; match fewer parts, or add a board to the rack");
}

}  // namespace

void give_up_matches(Demands& demands, const Planning& planning, Diagnostics& diagnostics) {
    std::vector<Demand> kept;
    for (Demand& demand : demands.pieces) {
        if (!demand.match || can_be_matched(demand, planning)) {
            kept.push_back(std::move(demand));
            continue;
        }
        diagnostics.add(given_up(demand, planning));
        const Match& match = planning.piece.matches[*demand.match];
        for (Demand& single : taken_singly(planning.piece, match, planning.milling))
            kept.push_back(std::move(single));
    }
    demands.pieces = std::move(kept);
}

void choose_boards_or_panels(Demands& demands, const Planning& planning, WoodPlan& plan) {
    std::erase_if(demands.panels, [&](const PanelDemand& panel) {
        if (!panel.need.suggested) return false;
        const auto blank = std::ranges::find_if(demands.pieces, [&](const Demand& demand) {
            return planning.piece[demand.pieces.front().parts.front().part].kind == panel.need.kind;
        });
        if (blank == demands.pieces.end() || some_board_holds(*blank, planning)) return true;
        Demand stave = *blank;
        stave.size[Axis::deep] = panel.need.narrowest;
        if (!some_board_holds(stave, planning)) return true;  // gluing up would not help
        demands.pieces.erase(blank);
        plan.notes.push_back(fmt::format("{} is wider than any board and is glued up", panel.label));
        return false;
    });
}

}  // namespace rodwright
