#include "compiler/stock/plan/level.hpp"

#include <algorithm>
#include <numeric>

#include "compiler/at_once.hpp"
#include "compiler/stock/cutting/bounds/bounds.hpp"
#include "compiler/stock/cutting/bounds/stock_choice.hpp"
#include "compiler/stock/cutting/solve.hpp"

namespace rodwright {
namespace {

using cutting::Amount;

constexpr int board_stages = 3;

// What all wood at hand may cost together: less than one hundredth of the rack's money does.
constexpr Amount all_worth = 10'000;

Amount whole(const Rational& value) {
    return static_cast<Amount>(ceil(value).get_num().get_si());
}

// One board's worth is its share of all.
Rational worth_unit(const std::vector<Stock>& stock) {
    Rational total = 0;
    for (const Stock& one : stock) total += one.worth * one.count.value_or(0);
    return total > 0 ? Rational(total / all_worth) : Rational(1);
}

Amount cost_of(const Stock& stock, const Rational& unit) {
    const Amount money = whole(stock.price * 100) * all_worth;
    return std::max<Amount>(1, money + whole(stock.worth / unit));
}

cutting::Rectangle barred_rectangle(const PlanArea& area, const PlanArea& usable, const Grid& grid) {
    cutting::Rectangle result;
    const auto put = [&](cutting::Axis axis, const Rational& from, const Rational& extent,
                         const Rational& origin) {
        const Rational start = std::max<Rational>(0, from - origin);
        result.corner[axis] = grid.down(start);
        result.size[axis] = std::max(1, grid.up(from + extent - origin) - result.corner[axis]);
    };
    put(cutting::Axis::length, area.from_end, area.length, usable.from_end);
    put(cutting::Axis::width, area.from_edge, area.width, usable.from_edge);
    return result;
}

cutting::Faces faces_of(DefectFace face) {
    switch (face) {
        case DefectFace::upper:
            return cutting::Faces::upper;
        case DefectFace::lower:
            return cutting::Faces::lower;
        case DefectFace::both:
            break;
    }
    return cutting::Faces::both;
}

cutting::StockPiece stock_piece(const Stock& stock, const Grid& grid, Amount cost) {
    cutting::StockPiece piece;
    piece.size = {{grid.down(stock.usable.length), grid.down(stock.usable.width)}};
    piece.available = stock.count;
    piece.cost = cost;
    for (const PlanDefect& barred : stock.barred) {
        piece.defects.push_back({barred_rectangle(barred.area, stock.usable, grid), faces_of(barred.face)});
    }
    return piece;
}

int number_of_pieces(const cutting::Problem& problem) {
    int pieces = 0;
    for (const cutting::PartKind& part : problem.parts) pieces += part.quantity;
    return pieces;
}

// Measured on random racks against a search twenty times as long: of up to 12 pieces none was found a place
// that a quick search had not; plans of 13 to 30, cheaper choices of boards tried, cost the same within 0.1 %
// on the whole; of 31 to 60 they cost 0.9 % more.
constexpr int very_few_pieces = 12;
constexpr int few_pieces = 30;

// The cheapest of a few choices of boards that holds all pieces, or the plan as it is.
LevelPlan cheaper_choice(const cutting::Problem& problem, LevelPlan best) {
    constexpr std::size_t most_choices = 6;
    const auto choices =
        cutting::stock_choices(problem, best.plan.bound.cost, best.plan.cost - 1, most_choices);
    std::vector<LevelPlan> plans(choices.size());
    at_once(choices.size(), [&](std::size_t i) {
        cutting::Problem restricted = problem;
        for (std::size_t kind = 0; kind < restricted.stock.size(); ++kind)
            restricted.stock[kind].available = choices[i][kind];
        plans[i] = {cutting::solve(restricted, cutting::Effort::quick)};
    });
    for (LevelPlan& plan : plans) {
        if (plan.missing() > 0 || plan.plan.cost >= best.plan.cost) continue;
        plan.plan.bound = best.plan.bound;
        best = std::move(plan);
    }
    return best;
}

}  // namespace

std::vector<Amount> costs_of(const std::vector<Stock>& stock) {
    const Rational unit = worth_unit(stock);
    std::vector<Amount> costs;
    for (const Stock& one : stock) costs.push_back(cost_of(one, unit));
    return costs;
}

cutting::Size saw_kerfs(bool sheet, const Grid& grid, const MillingData& milling) {
    const auto kerf = [&](const std::string& saw) { return grid.up(milling.kerf(saw)); };
    const Saws& saws = milling.saws;
    return {{kerf(sheet ? saws.sheets : saws.crosscut), kerf(sheet ? saws.sheets : saws.rip)}};
}

cutting::Problem cutting_problem(const Level& level, const Grid& grid, const MillingData& milling) {
    cutting::Problem problem;
    const std::vector<Amount> costs = costs_of(level.stock);
    bool no_grain = !level.stock.empty();
    for (std::size_t i = 0; i < level.stock.size(); ++i) {
        problem.stock.push_back(stock_piece(level.stock[i], grid, costs[i]));
        no_grain = no_grain && level.stock[i].board.no_grain;
    }
    bool sheet = false;
    for (const Demand& demand : level.demands) {
        problem.parts.push_back(
            {{{grid.up(demand.size[rodwright::Axis::wide]), grid.up(demand.size[rodwright::Axis::deep])}},
             static_cast<int>(demand.pieces.size()),
             no_grain,
             demand.one_face});
        sheet = sheet || demand.sheet;
    }
    problem.kerf = saw_kerfs(sheet, grid, milling);
    const OffcutLimits& kept = milling.offcuts;
    problem.least_useful = {
        {grid.up(sheet ? kept.sheet_length : kept.length), grid.up(sheet ? kept.sheet_width : kept.width)}};
    if (!sheet) problem.rule.stages = board_stages;
    const int held = grid.up(milling.saw_limits.shortest_mitre_saw);
    problem.rule.least_held = {{held, sheet ? held : 0}};
    const int shortest = level.machines_only ? grid.up(milling.saw_limits.shortest_rip) : 0;
    problem.rule.shortest_cut = {{shortest, shortest}};
    return problem;
}

std::size_t LevelPlan::missing() const {
    return static_cast<std::size_t>(std::accumulate(plan.missing.begin(), plan.missing.end(), 0));
}

bool LevelPlan::better_than(const LevelPlan& other) const {
    return std::pair(missing(), plan.cost) < std::pair(other.missing(), other.plan.cost);
}

LevelPlan solve_level(const Level& level, const Grid& grid, const MillingData& milling,
                      cutting::Effort effort) {
    cutting::Problem problem = cutting_problem(level, grid, milling);
    if (problem.stock.empty()) {
        LevelPlan none;
        for (const cutting::PartKind& part : problem.parts) none.plan.missing.push_back(part.quantity);
        return none;
    }
    return {cutting::solve(problem, effort)};
}

bool may_be_better(const Level& level, const LevelPlan& best, const Grid& grid, const MillingData& milling) {
    const cutting::Problem problem = cutting_problem(level, grid, milling);
    const bool something_is_missing =
        !problem.parts.empty() && (problem.stock.empty() || cutting::too_little_stock(problem));
    if (something_is_missing) return best.missing() > 1;
    return best.missing() > 0 || cutting::lower_bound(problem).cost < best.plan.cost;
}

LevelPlan improved(LevelPlan quick, const Level& level, const Grid& grid, const MillingData& milling,
                   cutting::Effort effort) {
    const cutting::Problem problem = cutting_problem(level, grid, milling);
    const bool finished = effort == cutting::Effort::quick || problem.stock.empty() || quick.plan.optimal();
    if (finished || cutting::too_little_stock(problem)) return quick;
    const int pieces = number_of_pieces(problem);
    if (effort == cutting::Effort::normal && quick.missing() == 0 && pieces <= few_pieces)
        return cheaper_choice(problem, std::move(quick));
    if (effort == cutting::Effort::normal && pieces <= very_few_pieces) return quick;
    LevelPlan longer{cutting::solve(problem, effort)};
    return longer.better_than(quick) ? longer : quick;
}

}  // namespace rodwright
