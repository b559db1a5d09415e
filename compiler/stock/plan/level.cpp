#include "compiler/stock/plan/level.hpp"

#include <algorithm>
#include <numeric>

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

cutting::StockPiece stock_piece(const Stock& stock, const Grid& grid, const Rational& unit) {
    cutting::StockPiece piece;
    piece.size = {{grid.down(stock.usable.length), grid.down(stock.usable.width)}};
    piece.available = stock.count;
    piece.cost = cost_of(stock, unit);
    for (const PlanArea& area : stock.barred) {
        piece.defects.push_back(barred_rectangle(area, stock.usable, grid));
    }
    return piece;
}

}  // namespace

cutting::Problem cutting_problem(const Level& level, const Grid& grid, const MillingData& milling) {
    cutting::Problem problem;
    const Rational unit = worth_unit(level.stock);
    bool no_grain = !level.stock.empty();
    for (const Stock& stock : level.stock) {
        problem.stock.push_back(stock_piece(stock, grid, unit));
        no_grain = no_grain && stock.no_grain;
    }
    bool sheet = false;
    for (const Demand& demand : level.demands) {
        problem.parts.push_back(
            {{{grid.up(demand.size[rodwright::Axis::wide]), grid.up(demand.size[rodwright::Axis::deep])}},
             static_cast<int>(demand.pieces.size()),
             no_grain});
        sheet = sheet || demand.sheet;
    }
    const auto kerf = [&](const std::string& saw) { return grid.up(milling.kerf(saw)); };
    problem.kerf = {{kerf(sheet ? milling.saws.sheets : milling.saws.crosscut),
                     kerf(sheet ? milling.saws.sheets : milling.saws.rip)}};
    const OffcutLimits& kept = milling.offcuts;
    problem.least_useful = {
        {grid.up(sheet ? kept.sheet_length : kept.length), grid.up(sheet ? kept.sheet_width : kept.width)}};
    if (!sheet) problem.rule.stages = board_stages;
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

}  // namespace rodwright
