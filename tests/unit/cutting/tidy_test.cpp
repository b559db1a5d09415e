// The order of strips: made untidy by hand, or by numbers that leave one best answer.
#include "compiler/stock/cutting/tidy.hpp"

#include <doctest/doctest.h>

#include "compiler/stock/cutting/figures.hpp"
#include "compiler/stock/cutting/solve.hpp"
#include "tests/unit/cutting/plan_checker.hpp"

using namespace rodwright::cutting;

namespace {

// Cuts a piece of 50 in width into strips of these lengths, with a kerf of 2; a strip is a part, or waste
// where its part is -1.
struct Strip {
    int part;
    int length;
};

CuttingPlan plan_of(const std::vector<Strip>& strips, int length) {
    CutTree tree;
    tree.nodes.push_back({});
    tree.nodes[0].area = {{}, {{length, 50}}};
    std::size_t rest = 0;
    for (std::size_t i = 0; i < strips.size(); ++i) {
        std::size_t own = rest;
        if (i + 1 < strips.size()) {
            own = tree.nodes.size();
            const Rectangle whole = tree.nodes[rest].area;
            const int end = whole.corner[Axis::length] + strips[i].length;
            CutNode first;
            first.area = {whole.corner, {{strips[i].length, 50}}};
            CutNode second;
            second.area = {{{end + 2, 0}}, {{length - end - 2, 50}}};
            CutNode& cut = tree.nodes[rest];
            cut.kind = CutNode::Kind::cut;
            cut.position = end;
            cut.first = static_cast<int>(own);
            cut.second = cut.first + 1;
            tree.nodes.push_back(first);
            tree.nodes.push_back(second);
            rest = own + 1;
        }
        tree.nodes[own].kind = strips[i].part < 0 ? CutNode::Kind::waste : CutNode::Kind::part;
        tree.nodes[own].part = strips[i].part;
    }
    CuttingPlan plan;
    plan.sheets.push_back(tree);
    plan.missing = {0, 0};
    plan.cost = 1;
    return plan;
}

Problem problem_with(int length, int large, int small) {
    Problem problem;
    problem.stock.push_back({{{length, 50}}, std::nullopt, 1, {}});
    problem.parts.push_back({{{40, 50}}, large, false});
    problem.parts.push_back({{{30, 50}}, small, false});
    problem.kerf = {{2, 1}};
    return problem;
}

// Where the leaves begin along the length, in the order of the parts given, with -1 for waste.
std::vector<int> starts_of(const CuttingPlan& plan, int part) {
    std::vector<int> starts;
    for (const CutNode& node : plan.sheets[0].nodes) {
        const bool wanted = part < 0 ? node.kind == CutNode::Kind::waste
                                     : node.kind == CutNode::Kind::part && node.part == part;
        if (wanted) starts.push_back(node.area.corner[Axis::length]);
    }
    return starts;
}

}  // namespace

TEST_SUITE("unit/cutting") {
    TEST_CASE("equal strips come side by side, the long ones first and waste last") {
        const Problem problem = problem_with(200, 2, 2);
        CuttingPlan plan = plan_of({{-1, 52}, {0, 40}, {1, 30}, {0, 40}, {1, 30}}, 200);
        REQUIRE(check_plan(problem, plan).empty());
        tidy(problem, plan);
        CHECK(check_plan(problem, plan).empty());
        CHECK(starts_of(plan, 0) == std::vector<int>{0, 42});
        CHECK(starts_of(plan, 1) == std::vector<int>{84, 116});
        CHECK(starts_of(plan, -1) == std::vector<int>{148});
        CHECK(figures_of(problem, plan).settings == 2);
    }

    // 60, 30, 30 and 10 of waste: the last cut would have sides of 30 and 10.
    TEST_CASE("short strips come first where else no side of a cut could be held") {
        Problem problem = problem_with(136, 1, 2);
        problem.parts[0].size[Axis::length] = 60;
        const CuttingPlan untidy = plan_of({{1, 30}, {0, 60}, {1, 30}, {-1, 10}}, 136);
        REQUIRE(check_plan(problem, untidy).empty());
        CuttingPlan plan = untidy;
        problem.rule.least_held[Axis::length] = 30;
        tidy(problem, plan);
        CHECK(starts_of(plan, 0) == std::vector<int>{0});
        plan = untidy;
        problem.rule.least_held[Axis::length] = 31;
        tidy(problem, plan);
        CHECK(check_plan(problem, plan).empty());
        CHECK(starts_of(plan, 0) == std::vector<int>{64});
    }

    TEST_CASE("a piece with a defect stays as it is") {
        Problem problem = problem_with(200, 2, 2);
        problem.stock[0].defects.push_back({{{{20, 20}}, {{5, 5}}}});
        CuttingPlan plan = plan_of({{-1, 52}, {0, 40}, {1, 30}, {0, 40}, {1, 30}}, 200);
        tidy(problem, plan);
        CHECK(check_plan(problem, plan).empty());
        CHECK(starts_of(plan, 0) == std::vector<int>{54, 128});
        CHECK(starts_of(plan, -1) == std::vector<int>{0});
    }

    // 40 + 40 + 30 and two kerfs fill the piece: 40, 40 and the rest is one setting.
    TEST_CASE("where nothing is wasted, the last strip needs no setting") {
        const Problem problem = problem_with(114, 2, 1);
        CuttingPlan plan = plan_of({{1, 30}, {0, 40}, {0, 40}}, 114);
        REQUIRE(check_plan(problem, plan).empty());
        CHECK(figures_of(problem, plan).settings == 2);
        tidy(problem, plan);
        CHECK(check_plan(problem, plan).empty());
        CHECK(starts_of(plan, 1) == std::vector<int>{84});
        CHECK(figures_of(problem, plan).settings == 1);
        // And with two short ones the long one is the last.
        const Problem other = problem_with(104, 1, 2);
        plan = plan_of({{1, 30}, {0, 40}, {1, 30}}, 104);
        tidy(other, plan);
        CHECK(check_plan(other, plan).empty());
        CHECK(starts_of(plan, 0) == std::vector<int>{64});
        CHECK(figures_of(other, plan).settings == 1);
    }

    // 30 + 30 + 30 and two kerfs leave 1, less than a third kerf.
    TEST_CASE("dust stays behind the last strip") {
        Problem problem = problem_with(95, 0, 3);
        const CuttingPlan plan = solve(problem, Effort::quick);
        CHECK(check_plan(problem, plan).empty());
        CHECK(starts_of(plan, 1) == std::vector<int>{0, 32, 64});
        CHECK(starts_of(plan, -1).empty());
        const PlanFigures figures = figures_of(problem, plan);
        CHECK(figures.cuts == 3);
        CHECK(figures.settings == 1);
    }

    // Rows of 40 x 20 and of 30 x 20 from one sheet: equal rows one after the other, and in them equal parts.
    TEST_CASE("a sheet of equal rows is cut with one setting for the rows and one for each length") {
        Problem problem;
        problem.stock.push_back({{{120, 80}}, std::nullopt, 1, {}});
        problem.parts.push_back({{{40, 20}}, 6, false});
        problem.parts.push_back({{{30, 20}}, 8, false});
        const CuttingPlan plan = solve(problem, Effort::normal);
        CHECK(check_plan(problem, plan).empty());
        CHECK(plan.cost == 1);
        CHECK(figures_of(problem, plan).settings <= 3);
    }
}
