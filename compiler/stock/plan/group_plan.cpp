#include "compiler/stock/plan/group_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "compiler/stock/plan/cut_up.hpp"
#include "compiler/stock/plan/saw_choice.hpp"
#include "compiler/stock/plan/staves.hpp"

namespace rodwright {
namespace {

// Less what earlier groups have taken, and with what is left of their boards.
std::vector<Stock> at_hand(PlanState& state, const DemandGroup& group, const Planning& planning) {
    std::vector<Stock> stock;
    for (Stock& one : stock_at_hand(planning.rack, group.query(), planning.milling, state.plan.notes)) {
        const auto used = state.used.find(one.board.origin);
        if (used != state.used.end()) *one.count -= used->second;
        if (*one.count > 0) stock.push_back(std::move(one));
    }
    for (const PlanGroup& earlier : state.plan.groups) {
        if (earlier.sheet || group.sheet || earlier.wood != group.wood->name) continue;
        for (Stock& left : stock_left_over(state.plan, earlier, group.query()))
            stock.push_back(std::move(left));
    }
    return stock;
}

void note_use(const LevelPlan& solved, const Level& level, PlanState& state) {
    for (const cutting::CutTree& tree : solved.plan.sheets) {
        const Stock& stock = level.stock[static_cast<std::size_t>(tree.stock)];
        if (!stock.left_of && !stock.board.origin.empty()) ++state.used[stock.board.origin];
    }
}

void note_square(const DemandGroup& group, WoodPlan& plan) {
    if (!group.square) return;
    plan.notes.push_back(fmt::format(
        "{}: saw square parts where the rings run from corner to corner, so that all four faces look alike; "
        "flat-sawn boards have such wood along their edges (rule of the trade)",
        group.title));
}

struct SolvedLevel {
    Level level;
    LevelPlan plan;
};

SolvedLevel solve_with_staves(const DemandGroup& group, std::vector<Stock> stock, const Planning& planning) {
    StavedLevel staved = with_staves(group, std::move(stock), planning.grid, planning.milling);
    LevelPlan best =
        improved(std::move(staved.quick), staved.level, planning.grid, planning.milling, planning.effort);
    return {std::move(staved.level), std::move(best)};
}

std::size_t cuts_by_hand_after(const SolvedLevel& solved, const WoodPlan& before, const Planning& planning) {
    WoodPlan plan = before;
    cut_up(solved.plan, solved.level, planning.grid, planning.milling, plan);
    return cuts_by_hand(plan);
}

// Where a plan has cuts that no machine can hold, one with fewer of them, if it costs no more.
SolvedLevel for_machines(SolvedLevel found, const WoodPlan& before, const Planning& planning) {
    const std::size_t by_hand = cuts_by_hand_after(found, before, planning);
    if (by_hand == cuts_by_hand(before)) return found;
    SolvedLevel other{found.level, {}};
    other.level.machines_only = true;
    other.plan = solve_level(other.level, planning.grid, planning.milling, planning.effort);
    const bool better =
        !found.plan.better_than(other.plan) && cuts_by_hand_after(other, before, planning) < by_hand;
    return better ? other : found;
}

}  // namespace

std::size_t PlanState::missing() const {
    std::size_t count = 0;
    for (const Shortfall& shortfall : shortfalls)
        count +=
            static_cast<std::size_t>(std::accumulate(shortfall.missing.begin(), shortfall.missing.end(), 0));
    return count;
}

std::vector<std::string> candidates(const DemandGroup& group, const Planning& planning) {
    std::vector<std::string> unsaid;
    std::vector<std::string> names;
    for (const Stock& stock : stock_at_hand(planning.rack, group.query(), planning.milling, unsaid))
        names.push_back(stock.board.name);
    for (const Stock& stock :
         stock_for_sale(planning.rack, group.query(), planning.milling, planning.piece.style))
        names.push_back(stock.board.offer);
    return names;
}

bool is_for_sale(const DemandGroup& group, const Planning& planning) {
    return !stock_for_sale(planning.rack, group.query(), planning.milling, planning.piece.style).empty();
}

PlanState with_group(PlanState before, const DemandGroup& group, const Planning& planning, bool buy) {
    PlanState state = std::move(before);
    std::vector<Stock> stock = at_hand(state, group, planning);
    std::vector<Stock> sale;
    if (buy) sale = stock_for_sale(planning.rack, group.query(), planning.milling, planning.piece.style);
    for (Stock& one : sale) stock.push_back(std::move(one));
    auto [level, solved] =
        for_machines(solve_with_staves(group, std::move(stock), planning), state.plan, planning);
    note_square(group, state.plan);
    PlanGroup planned;
    planned.wood = group.wood->name;
    planned.title = group.title;
    planned.sheet = group.sheet;
    planned.least_thickness = group.least_thickness;
    planned.boards = cut_up(solved, level, planning.grid, planning.milling, state.plan);
    note_use(solved, level, state);
    planned.complete = solved.missing() == 0;
    state.groups.push_back({group, state.plan.groups.size(), !sale.empty()});
    state.plan.groups.push_back(std::move(planned));
    if (solved.missing() > 0) state.shortfalls.push_back({group, std::move(level), solved.plan.missing});
    return state;
}

}  // namespace rodwright
