// Cutting problems whose optimum others have published.
#include <doctest/doctest.h>

#include "compiler/stock/cutting/solve.hpp"
#include "tests/unit/cutting/plan_checker.hpp"

using namespace rodwright::cutting;

TEST_SUITE("reference/cutting") {
    // Source: Wikipedia, "Cutting stock problem", the paper machine's example (rolls of 5600 mm, 13 widths;
    // "73 master rolls"); from memory.
    TEST_CASE("paper rolls of 5600: 73 are needed and suffice") {
        Problem problem;
        problem.stock.push_back({{{5600, 1}}, std::nullopt, 1, {}});
        const std::vector<std::pair<int, int>> widths = {
            {1380, 22}, {1520, 25}, {1560, 12}, {1710, 14}, {1820, 18}, {1880, 18}, {1930, 20},
            {2000, 10}, {2050, 12}, {2100, 14}, {2140, 16}, {2150, 18}, {2200, 20}};
        for (const auto& width : widths) problem.parts.push_back({{{width.first, 1}}, width.second, false});
        const CuttingPlan plan = solve(problem, Effort::normal);
        CHECK(check_plan(problem, plan).empty());
        CHECK(plan.complete());
        CHECK(plan.cost == 73);
        CHECK(plan.bound.cost == 73);
    }

    // Source: common knowledge, no source: four rectangles round a square need cuts that do not go from edge
    // to edge, so that guillotine cuts cannot get all five from the square that they fill.
    TEST_CASE("the pinwheel is no guillotine pattern") {
        Problem problem;
        problem.stock.push_back({{{3, 3}}, std::nullopt, 1, {}});
        problem.parts.push_back({{{2, 1}}, 2, false});
        problem.parts.push_back({{{1, 2}}, 2, false});
        problem.parts.push_back({{{1, 1}}, 1, false});
        const CuttingPlan plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK(plan.cost == 2);
        CHECK(plan.bound.cost == 2);  // the area alone would let one do
    }
}
