#include "compiler/stock/plan/group_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

#include "compiler/stock/cutting/bounds/bounds.hpp"
#include "compiler/stock/plan/cut_up.hpp"
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
        for (Stock& left : stock_left_over(state.plan, earlier)) {
            if (left.board.thickness >= group.least_thickness) stock.push_back(std::move(left));
        }
    }
    return stock;
}

// Counted in boards, whatever each is worth; and how far the worth of the plan can be from the least.
void add_bound(const LevelPlan& solved, const Level& level, const Planning& planning, PlanGroup& planned) {
    if (!solved.plan.complete() || solved.plan.sheets.empty()) return;
    cutting::Problem problem = cutting_problem(level, planning.grid, planning.milling);
    constexpr cutting::Amount board = 1000;  // so that what is left of another board costs next to nothing
    for (std::size_t i = 0; i < problem.stock.size(); ++i)
        problem.stock[i].cost = level.stock[i].left_of ? 1 : board;
    const cutting::LowerBound bound = cutting::lower_bound(problem);
    planned.at_least = static_cast<int>(bound.cost / board);
    planned.at_least_by = cutting::bound_method_name(bound.method);
    planned.proven = solved.plan.optimal();
    const cutting::Amount least = solved.plan.bound.cost;
    if (!planned.proven && least > 0) planned.over = ratio(solved.plan.cost, least) - 1;
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

LevelPlan solve_with_staves(Level& level, const DemandGroup& group, const Planning& planning) {
    level.demands = with_staves(group, level.stock, planning.grid, planning.milling);
    return solve_level(level, planning.grid, planning.milling, planning.effort);
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

PlanState with_group(PlanState before, const DemandGroup& group, const Planning& planning, bool buy) {
    PlanState state = std::move(before);
    Level level{{}, at_hand(state, group, planning)};
    LevelPlan solved = solve_with_staves(level, group, planning);
    std::vector<Stock> sale;
    if (buy && solved.missing() > 0)
        sale = stock_for_sale(planning.rack, group.query(), planning.milling, planning.piece.style);
    if (!sale.empty()) {
        for (Stock& one : sale) level.stock.push_back(std::move(one));
        solved = solve_with_staves(level, group, planning);
    }
    note_square(group, state.plan);
    PlanGroup planned;
    planned.wood = group.wood->name;
    planned.title = group.title;
    planned.sheet = group.sheet;
    planned.least_thickness = group.least_thickness;
    planned.boards = cut_up(solved, level, planning.grid, planning.milling, state.plan);
    note_use(solved, level, state);
    add_bound(solved, level, planning, planned);
    planned.complete = solved.missing() == 0;
    state.plan.groups.push_back(std::move(planned));
    if (solved.missing() > 0) state.shortfalls.push_back({group, std::move(level), solved.plan.missing});
    return state;
}

}  // namespace rodwright
