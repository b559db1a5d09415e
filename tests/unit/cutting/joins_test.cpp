// Parts that fill a piece of stock: made by joins, or proved not to be possible.
#include <doctest/doctest.h>

#include <utility>

#include "compiler/stock/cutting/random.hpp"
#include "compiler/stock/cutting/solve.hpp"
#include "tests/unit/cutting/plan_checker.hpp"

using namespace rodwright::cutting;

namespace {

Problem one_kind_of_sheet(Size size) {
    Problem problem;
    problem.stock.push_back({size, std::nullopt, 1, {}});
    return problem;
}

// Four parts turning round a fifth: the oldest dissection that no cut from edge to edge takes apart.
Problem pinwheel() {
    Problem problem = one_kind_of_sheet({{3, 3}});
    problem.parts = {{{{2, 1}}, 2, false}, {{{1, 2}}, 2, false}, {{{1, 1}}, 1, false}};
    return problem;
}

// A sheet that has been cut up without waste, but for the kerf.
Problem puzzle(Size size, Size kerf, std::size_t pieces, std::uint64_t seed) {
    Random random(seed);
    std::vector<Size> sizes = {size};
    while (sizes.size() < pieces) {
        Size& whole = sizes[static_cast<std::size_t>(random.below(static_cast<int>(sizes.size())))];
        const Axis axis = whole.along[0] > whole.along[1] ? Axis::length : Axis::width;
        if (whole[axis] < 60) continue;
        const int position = 20 + random.below(whole[axis] - 40 - kerf[axis]);
        Size rest = whole;
        rest[axis] -= position + kerf[axis];
        whole[axis] = position;
        sizes.push_back(rest);
    }
    Problem problem = one_kind_of_sheet(size);
    problem.kerf = kerf;
    for (const Size part : sizes) problem.parts.push_back({part, 1, random.one_in(4)});
    return problem;
}

}  // namespace

TEST_SUITE("unit/cutting") {
    TEST_CASE("a pinwheel is not cut from one sheet, and the bound says so") {
        const CuttingPlan plan = solve(pinwheel(), Effort::quick);
        CHECK(check_plan(pinwheel(), plan).empty());
        CHECK(plan.cost == 2);
        CHECK(plan.bound.cost == 2);
        CHECK(plan.bound.method == BoundMethod::joins);
    }

    TEST_CASE("with its parts turned it is") {
        Problem problem = pinwheel();
        for (PartKind& part : problem.parts) part.may_turn = true;
        CHECK(solve(problem, Effort::quick).cost == 1);
    }

    TEST_CASE("nor is it with a rule, a defect or a hair of waste") {
        Problem problem = pinwheel();
        problem.rule.stages = 2;
        CHECK(solve(problem, Effort::quick).bound.cost == 2);
        problem = pinwheel();
        problem.stock[0].defects.push_back({{{{0, 0}}, {{1, 1}}}});
        CHECK(solve(problem, Effort::quick).bound.cost >= 2);
        problem = one_kind_of_sheet({{301, 302}});
        problem.parts = {{{{200, 100}}, 2, false}, {{{100, 200}}, 2, false}, {{{100, 100}}, 1, false}};
        CHECK(solve(problem, Effort::quick).bound.cost == 2);
    }

    TEST_CASE("puzzles without waste are put together") {
        for (std::uint64_t seed = 1; seed <= 12; ++seed) {
            CAPTURE(seed);
            const Size kerf = seed % 2 == 0 ? Size{{3, 4}} : Size{};
            const Problem problem = puzzle({{1900, 1300}}, kerf, 30, seed);
            const CuttingPlan plan = solve(problem, Effort::normal);
            CHECK(check_plan(problem, plan).empty());
            CHECK(plan.cost == 1);
        }
    }

    TEST_CASE("what is joined against the rule proves nothing") {
        Problem problem = one_kind_of_sheet({{3, 3}});
        problem.parts = {
            {{{3, 1}}, 1, false}, {{{1, 2}}, 1, false}, {{{2, 1}}, 1, false}, {{{1, 1}}, 2, false}};
        CHECK(solve(problem, Effort::quick).cost == 1);
        problem.rule.stages = 2;
        problem.rule.trimming = false;
        const CuttingPlan plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK(plan.complete());
        CHECK(plan.cost > 1);
        CHECK(plan.bound.method != BoundMethod::joins);
    }
}
