#include "compiler/stock/plan/plan_wood.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/stock/plan/bound.hpp"
#include "compiler/stock/plan/buying.hpp"
#include "compiler/stock/plan/dowels.hpp"
#include "compiler/stock/plan/fallbacks.hpp"
#include "compiler/stock/plan/group_plan.hpp"
#include "compiler/stock/plan/remedies.hpp"
#include "compiler/stock/plan/resaw.hpp"

namespace rodwright {
namespace {

// Pieces that differ in thickness but come out of the same boards are planned together.
std::vector<DemandGroup> joined_where_alike(std::vector<DemandGroup> groups, const Planning& planning) {
    std::vector<DemandGroup> result;
    for (DemandGroup& group : groups) {
        if (!result.empty() && result.back().wood == group.wood && !group.sheet &&
            candidates(result.back(), planning) == candidates(group, planning)) {
            result.back().take_in(std::move(group));
        } else {
            result.push_back(std::move(group));
        }
    }
    return result;
}

// Where the wood at hand is not enough as it is, thick boards are sawn open for thin pieces, each thickness
// at hand in turn; what that does not give either is bought.
PlanState plan_group(const PlanState& before, const DemandGroup& group, const Planning& planning) {
    PlanState best = with_group(before, group, planning, false);
    if (best.shortfalls.size() == before.shortfalls.size()) return best;
    for (const ResawSplit& split : resaw_splits(group, planning)) {
        PlanState tried = with_group(before, split.leaves, planning, false);
        if (tried.missing() >= best.missing()) continue;
        if (split.rest) tried = with_group(std::move(tried), *split.rest, planning, false);
        if (tried.missing() < best.missing()) best = std::move(tried);
    }
    const bool enough = best.shortfalls.size() == before.shortfalls.size();
    if (enough || !is_for_sale(group, planning)) return best;
    PlanState bought = with_group(before, group, planning, true);
    return bought.missing() < best.missing() ? bought : best;
}

void report_missing(const Shortfall& shortfall, const Planning& planning, WoodPlan& plan,
                    Diagnostics& diagnostics) {
    const LengthStyle& style = planning.piece.style;
    std::string list;
    Span where;
    for (std::size_t i = 0; i < shortfall.missing.size(); ++i) {
        const int count = shortfall.missing[i];
        if (count == 0) continue;
        const Demand& demand = shortfall.level.demands[i];
        if (list.empty()) where = planning.piece[demand.pieces.back().parts.front().part].where;
        plan.missing.push_back({demand.label, count, demand.size, shortfall.group.title});
        list += fmt::format("{}{} of {} ({} x {})", list.empty() ? "" : ", ", count, demand.label,
                            format_length(demand.size[Axis::wide], style),
                            format_length(demand.size[Axis::deep], style));
    }
    Diagnostic diagnostic =
        diagnose(Code::short_of_wood, where,
                 fmt::format("{}: no board is left for {}, rough sizes", shortfall.group.title, list));
    for (std::string& remedy : remedies({shortfall, planning.grid, planning.milling, style})) {
        diagnostic.notes.push_back("it would be enough with " + remedy);
        plan.remedies.push_back(std::move(remedy));
    }
    diagnostics.add(std::move(diagnostic));
}

// The part that is named in the message: one that comes off the cut.
Span where_of(const PlannedBoard& board, const PlannedCut& cut, const Piece& piece) {
    const PlanArea& of = board.regions[cut.of].area;
    for (const PlanRegion& region : board.regions) {
        const bool inside = region.piece && region.area.from_end >= of.from_end &&
                            region.area.from_end < of.from_end + of.length &&
                            region.area.from_edge >= of.from_edge &&
                            region.area.from_edge < of.from_edge + of.width;
        if (inside) return piece[board.pieces[*region.piece].parts.front().part].where;
    }
    return {};
}

void report_cuts_by_hand(const Planning& planning, const WoodPlan& plan, Diagnostics& diagnostics) {
    for (const PlannedBoard& board : plan.boards) {
        const auto first = std::ranges::find(board.cuts, CutCare::by_hand, &PlannedCut::care);
        if (first == board.cuts.end()) continue;
        const auto count = std::ranges::count(board.cuts, CutCare::by_hand, &PlannedCut::care);
        const PlanArea& area = board.regions[first->of].area;
        const auto shown = [&](const Rational& length) {
            return format_length(length, planning.piece.style);
        };
        diagnostics.add(
            diagnose(
                Code::cut_by_hand, where_of(board, *first, planning.piece),
                fmt::format("{}: what cut {} is made in, {} x {}, is too small for a machine to hold{}",
                            board.name, first - board.cuts.begin() + 1, shown(area.length), shown(area.width),
                            count > 1 ? fmt::format("; {} such cuts in all", count) : std::string()))
                .hint("saw by hand where the list of cuts says so, or add a larger board or sheet to the "
                      "rack"));
    }
}

// A board may have been passed over for the same reason more than once.
void say_once(std::vector<std::string>& notes) {
    std::vector<std::string> once;
    for (std::string& note : notes) {
        if (std::ranges::find(once, note) == once.end()) once.push_back(std::move(note));
    }
    notes = std::move(once);
}

void add_volumes(const Piece& piece, WoodPlan& plan) {
    for (const Kind& kind : piece.kinds) {
        if (piece.find_wood(kind.wood) == nullptr) continue;
        plan.finished_volume += kind.overall(Axis::wide) * kind.overall(Axis::deep) *
                                kind.overall(Axis::tall) *
                                Rational(static_cast<unsigned long>(kind.parts.size()));
    }
    for (const PlannedBoard& board : plan.boards) {
        Rational area = board.length * (board.width + board.far_width) / 2;
        for (const PlanRegion& region : board.regions) {
            if (region.kind == PlanRegion::Kind::offcut) area -= region.area.length * region.area.width;
        }
        plan.used_volume += area * board.thickness;
    }
}

}  // namespace

WoodPlan plan_wood(const Piece& whole, const WoodSupply& supply, cutting::Effort effort,
                   Diagnostics& diagnostics) {
    const Piece piece = without_made(whole);
    PlanState state;
    state.plan.rough = rough_sizes(without_matched(piece), supply.milling);
    if (!supply.rack) return std::move(state.plan);
    const Planning planning{piece, *supply.rack, supply.milling, Grid(piece.style.unit), effort};
    state.plan.planned = true;
    state.plan.money = supply.rack->money;
    Demands demands = demands_of(piece, supply.milling, state.plan.rough);
    give_up_matches(demands, planning, diagnostics);
    choose_boards_or_panels(demands, planning, state.plan);
    for (const DemandGroup& group : joined_where_alike(grouped(piece, std::move(demands)), planning))
        state = plan_group(state, group, planning);
    for (const Shortfall& shortfall : state.shortfalls)
        report_missing(shortfall, planning, state.plan, diagnostics);
    report_cuts_by_hand(planning, state.plan, diagnostics);
    say_once(state.plan.notes);
    state.plan.bounds = bounds_of(state, planning);
    add_purchases(planning, state.plan);
    add_dowel_rods(planning, state.plan);
    add_volumes(piece, state.plan);
    return std::move(state.plan);
}

}  // namespace rodwright
