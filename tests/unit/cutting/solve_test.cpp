// The core's promises that need no known optimum.
#include "compiler/stock/cutting/solve.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <stdexcept>

#include "tests/unit/cutting/plan_checker.hpp"

using namespace rodwright::cutting;

namespace {

Problem sheet_job() {
    Problem problem;
    problem.stock.push_back({{{2440, 1220}}, std::nullopt, 1, {}});
    problem.kerf = {{3, 4}};
    int size = 137;
    for (int i = 0; i < 12; ++i) {
        size = (size * 31 + 17) % 900;
        problem.parts.push_back({{{150 + size, 120 + (size * 7) % 500}}, 1 + i % 4, i % 2 == 0});
    }
    return problem;
}

bool same(const CuttingPlan& a, const CuttingPlan& b) {
    if (a.cost != b.cost || a.sheets.size() != b.sheets.size()) return false;
    for (std::size_t i = 0; i < a.sheets.size(); ++i) {
        if (a.sheets[i].nodes.size() != b.sheets[i].nodes.size()) return false;
        for (std::size_t k = 0; k < a.sheets[i].nodes.size(); ++k) {
            const CutNode& x = a.sheets[i].nodes[k];
            const CutNode& y = b.sheets[i].nodes[k];
            if (x.area != y.area || x.part != y.part || x.position != y.position) return false;
        }
    }
    return true;
}

}  // namespace

TEST_SUITE("unit/cutting") {
    TEST_CASE("the same problem gives the same plan") {
        CHECK(same(solve(sheet_job(), Effort::quick), solve(sheet_job(), Effort::quick)));
    }

    TEST_CASE("parts that no stock holds are missing, the others are cut") {
        Problem problem = sheet_job();
        problem.parts.push_back({{{2441, 100}}, 2, true});
        const CuttingPlan plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK(plan.missing.back() == 2);
        CHECK(!plan.complete());
        CHECK(std::count(plan.missing.begin(), plan.missing.end(), 0) == 12);
    }

    TEST_CASE("limited stock that does not suffice leaves parts missing, in two dimensions and in one") {
        Problem problem = sheet_job();
        problem.stock[0].available = 1;
        CuttingPlan plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK(!plan.complete());
        CHECK(plan.sheets.size() == 1);

        Problem bars;
        bars.kerf[Axis::length] = 3;
        bars.stock.push_back({{{1000, 1}}, 1, 7, {}});
        bars.parts.push_back({{{400, 1}}, 3, false});
        plan = solve(bars, Effort::quick);
        CHECK(check_plan(bars, plan).empty());
        CHECK(plan.missing == std::vector<int>{1});
    }

    TEST_CASE("nothing to cut, and nothing to cut from") {
        Problem problem = sheet_job();
        problem.parts.clear();
        CHECK(solve(problem, Effort::quick).sheets.empty());
        problem = sheet_job();
        problem.stock.clear();
        const CuttingPlan plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK(plan.sheets.empty());
    }

    TEST_CASE("a part of the stock's own size is no cut, and a rest narrower than the kerf is dust") {
        Problem problem;
        problem.kerf = {{4, 4}};
        problem.stock.push_back({{{100, 50}}, 2, 1, {}});
        problem.parts.push_back({{{100, 50}}, 1, false});
        problem.parts.push_back({{{97, 50}}, 1, false});
        const CuttingPlan plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK(plan.optimal());
        CHECK(plan.sheets[0].nodes.size() + plan.sheets[1].nodes.size() == 3);
    }

    // Four parts of 10 x 20 beside a long one. Across first, they would come out of a piece that is 10 long.
    TEST_CASE("no cut is shorter than the rule says, and what needs one is missing") {
        Problem problem;
        problem.stock.push_back({{{100, 40}}, 1, 1, {}});
        problem.parts.push_back({{{90, 40}}, 1, false});
        problem.parts.push_back({{{10, 20}}, 2, false});
        CHECK(solve(problem, Effort::quick).complete());
        problem.rule.shortest_cut[Axis::width] = 11;
        CuttingPlan plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK_FALSE(plan.complete());
        problem.rule.shortest_cut[Axis::width] = 10;
        CHECK(solve(problem, Effort::quick).complete());
        problem.rule.shortest_cut[Axis::width] = 11;
        problem.rule.least_held[Axis::width] = 20;  // one half is held while the other is cut off
        plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK(plan.complete());
        problem.rule.least_held[Axis::width] = 21;
        CHECK_FALSE(solve(problem, Effort::quick).complete());
        // With the long part as wide as they are the first cut can run along all of the stock.
        problem.parts[0].size = {{90, 20}};
        problem.rule.shortest_cut[Axis::width] = 11;
        plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK(plan.complete());
    }

    TEST_CASE("wrong sizes are refused") {
        Problem problem = sheet_job();
        problem.parts[0].size = {{0, 10}};
        CHECK_THROWS_AS(solve(problem, Effort::quick), std::invalid_argument);
        problem = sheet_job();
        problem.kerf = {{0, -1}};
        CHECK_THROWS_AS(solve(problem, Effort::quick), std::invalid_argument);
        problem = sheet_job();
        problem.rule.shortest_cut = {{0, -1}};
        CHECK_THROWS_AS(solve(problem, Effort::quick), std::invalid_argument);
        problem = sheet_job();
        problem.stock[0].size = {{max_size + 1, 10}};
        CHECK_THROWS_AS(solve(problem, Effort::quick), std::invalid_argument);
    }
}
