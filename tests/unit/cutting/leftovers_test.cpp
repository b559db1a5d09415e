// What is left where several plans cost the same: cases whose best answer is plain by hand.
#include <doctest/doctest.h>

#include "compiler/stock/cutting/figures.hpp"
#include "compiler/stock/cutting/solve.hpp"
#include "tests/unit/cutting/plan_checker.hpp"

using namespace rodwright::cutting;

namespace {

Problem problem_on(Size stock, std::vector<PartKind> parts) {
    Problem problem;
    problem.stock.push_back({stock, std::nullopt, 1, {}});
    problem.parts = std::move(parts);
    return problem;
}

PlanFigures solved(const Problem& problem, Amount cost) {
    const CuttingPlan plan = solve(problem, Effort::normal);
    CHECK(check_plan(problem, plan).empty());
    CHECK(plan.cost == cost);
    return figures_of(problem, plan);
}

}  // namespace

TEST_SUITE("unit/cutting") {
    // 6 + 2 and 6 + 2 would leave 2 twice, where 6 + 2 + 2 leaves nothing and 6 alone 4.
    TEST_CASE("bars leave one long rest rather than two short ones") {
        const PlanFigures figures =
            solved(problem_on({{10, 1}}, {{{{6, 1}}, 2, false}, {{{2, 1}}, 2, false}}), 2);
        CHECK(figures.useful_rectangles == 1);
        CHECK(figures.useful_area == 4);
    }

    // Widths 60 + 20 + 20 fill one sheet and 30 leaves 70 of the other.
    TEST_CASE("sheets are filled, and the last one keeps what is left") {
        const Problem problem = problem_on(
            {{100, 100}}, {{{{100, 60}}, 1, false}, {{{100, 30}}, 1, false}, {{{100, 20}}, 2, false}});
        const PlanFigures figures = solved(problem, 2);
        CHECK(figures.useful_rectangles == 1);
        CHECK(figures.useful_area == 7000);
    }

    // Off 100 x 60, a part of 60 x 40 leaves 40 x 60 and 60 x 20, or 100 x 20 and 40 x 40.
    TEST_CASE("the first cut is the one that leaves the larger rectangle, of those that are of use") {
        Problem problem = problem_on({{100, 60}}, {{{{60, 40}}, 1, false}});
        PlanFigures figures = solved(problem, 1);
        CHECK(figures.usefulness == 2400.0 * 2400 + 1200.0 * 1200);
        problem.least_useful = {{90, 15}};
        figures = solved(problem, 1);
        CHECK(figures.useful_rectangles == 1);
        CHECK(figures.useful_area == 2000);
    }

    // Four parts of 45 x 45 lie two by two in a corner and leave 90 x 10 and 10 x 100, or in a row along the
    // sheet of 180 and leave 180 x 55.
    TEST_CASE("parts lie so that what is left is one rectangle") {
        Problem problem = problem_on({{180, 100}}, {{{{45, 45}}, 4, false}});
        const PlanFigures figures = solved(problem, 1);
        CHECK(figures.useful_rectangles == 1);
        CHECK(figures.useful_area == 180 * 55);
    }

    TEST_CASE("a rest counts from the least useful size on, without the kerf") {
        Problem problem = problem_on({{100, 10}}, {{{{50, 10}}, 1, false}});
        problem.kerf = {{4, 3}};
        problem.least_useful = {{46, 10}};
        CHECK(solved(problem, 1).useful_area == 460);
        problem.least_useful = {{47, 10}};
        CHECK(solved(problem, 1).useful_rectangles == 0);
    }

    // A small piece at 7 and a large one at 10 hold all for 17; two small ones would leave more for 14, but
    // only one is there; two large ones would leave most, for 20.
    TEST_CASE("useful leftovers never cost anything") {
        Problem problem = problem_on({{100, 100}}, {{{{60, 60}}, 2, false}});
        problem.stock[0].cost = 10;
        problem.stock.push_back({{{60, 61}}, 1, 7, {}});
        solved(problem, 17);
    }
}
