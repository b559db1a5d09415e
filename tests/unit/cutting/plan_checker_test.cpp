// The checker itself: it passes a right plan and finds each kind of mistake put into it.
#include "tests/unit/cutting/plan_checker.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "compiler/stock/cutting/solve.hpp"

using namespace rodwright::cutting;

namespace {

// One sheet of 100 x 50 with a kerf of 2 along the length and of 1 across it: a part of 40 x 50 cut off, then
// one of 58 x 20 off the rest.
Problem sample_problem() {
    Problem problem;
    problem.stock.push_back({{{100, 50}}, 1, 5, {}});
    problem.parts.push_back({{{40, 50}}, 1, false});
    problem.parts.push_back({{{58, 20}}, 1, false});
    problem.kerf = {{2, 1}};
    problem.rule.stages = 2;
    return problem;
}

CutNode part_at(int part, Rectangle area) {
    CutNode node;
    node.kind = CutNode::Kind::part;
    node.part = part;
    node.area = area;
    return node;
}

CutNode cut_at(Rectangle area, Axis axis, int position, int first, int second) {
    CutNode node;
    node.kind = CutNode::Kind::cut;
    node.area = area;
    node.axis = axis;
    node.position = position;
    node.first = first;
    node.second = second;
    return node;
}

CuttingPlan sample_plan() {
    CutTree tree;
    CutNode waste;
    waste.area = {{{42, 21}}, {{58, 29}}};
    tree.nodes = {cut_at({{{0, 0}}, {{100, 50}}}, Axis::length, 40, 1, 2), part_at(0, {{{0, 0}}, {{40, 50}}}),
                  cut_at({{{42, 0}}, {{58, 50}}}, Axis::width, 20, 3, 4), part_at(1, {{{42, 0}}, {{58, 20}}}),
                  waste};
    CuttingPlan plan;
    plan.sheets.push_back(tree);
    plan.missing = {0, 0};
    plan.cost = 5;
    return plan;
}

bool has_fault(const Problem& problem, const CuttingPlan& plan, const std::string& words) {
    const auto faults = check_plan(problem, plan);
    return std::any_of(faults.begin(), faults.end(),
                       [&](const std::string& fault) { return fault.find(words) != std::string::npos; });
}

}  // namespace

TEST_SUITE("unit/cutting") {
    TEST_CASE("a right plan passes the checker") {
        CHECK(check_plan(sample_problem(), sample_plan()).empty());
    }

    TEST_CASE("the checker finds pieces that do not meet their cuts") {
        CuttingPlan plan = sample_plan();
        plan.sheets[0].nodes[0].position = 41;
        CHECK(has_fault(sample_problem(), plan, "does not end at its cut"));
        plan = sample_plan();
        plan.sheets[0].nodes[2].area.size[Axis::width] = 49;
        CHECK(has_fault(sample_problem(), plan, "not from edge to edge"));
        plan = sample_plan();
        plan.sheets[0].nodes[2].second = CutNode::none;
        CHECK(has_fault(sample_problem(), plan, "second piece is missing"));
        plan = sample_plan();
        plan.sheets[0].nodes[0].area.size[Axis::length] = 101;
        CHECK(has_fault(sample_problem(), plan, "the root is not the stock piece"));
    }

    TEST_CASE("the checker finds another kerf, another size and a turned part") {
        Problem problem = sample_problem();
        problem.kerf[Axis::length] = 3;
        CHECK(has_fault(problem, sample_plan(), "does not end at its cut"));
        problem = sample_problem();
        problem.kerf[Axis::width] = 2;
        CHECK(has_fault(problem, sample_plan(), "does not end at its cut"));
        problem = sample_problem();
        problem.parts[1].size = {{57, 20}};
        CHECK(has_fault(problem, sample_plan(), "has the wrong size"));
        problem = sample_problem();
        problem.parts[1].size = {{20, 58}};
        CuttingPlan plan = sample_plan();
        plan.sheets[0].nodes[3].turned = true;
        CHECK(has_fault(problem, plan, "part 1 turned"));
        problem.parts[1].may_turn = true;
        CHECK(check_plan(problem, plan).empty());
    }

    TEST_CASE("the checker counts parts, stock, stages and cost") {
        CuttingPlan plan = sample_plan();
        plan.sheets[0].nodes[3].part = 0;
        CHECK(has_fault(sample_problem(), plan, "part 1: 0 there, 0 missing, 1 asked for"));
        plan = sample_plan();
        plan.sheets.push_back(plan.sheets[0]);
        CHECK(has_fault(sample_problem(), plan, "only 1 there"));
        plan = sample_plan();
        plan.cost = 4;
        CHECK(has_fault(sample_problem(), plan, "costs 5, not 4"));
        plan = sample_plan();
        plan.bound.cost = 6;
        CHECK(has_fault(sample_problem(), plan, "cheaper than its lower bound"));
        Problem problem = sample_problem();
        problem.rule.stages = 1;
        CHECK(check_plan(problem, sample_plan()).empty());  // the second stage only trims
        problem.rule.trimming = false;
        CHECK(has_fault(problem, sample_plan(), "2 stages"));
        problem = sample_problem();
        problem.rule.first_axis = Axis::width;
        CHECK(check_plan(problem, sample_plan()).empty());  // the third stage only trims
        problem.rule.trimming = false;
        CHECK(has_fault(problem, sample_plan(), "3 stages"));
    }

    TEST_CASE("the checker finds a part on a defect") {
        Problem problem = sample_problem();
        problem.stock[0].defects.push_back({{{{60, 19}}, {{5, 5}}}});
        CHECK(has_fault(problem, sample_plan(), "part 1 on a defect"));
        problem.stock[0].defects[0].area.corner = {{60, 20}};
        CHECK(check_plan(problem, sample_plan()).empty());
    }

    TEST_CASE("the checker finds a part that has defects on both of its faces") {
        Problem problem = sample_problem();
        const Rectangle place{{{60, 19}}, {{5, 5}}};
        const std::string fault = "part 1 on a defect";
        problem.stock[0].defects.push_back({place, Faces::upper});
        CHECK(has_fault(problem, sample_plan(), fault));
        problem.parts[1].one_face = true;
        CHECK_FALSE(has_fault(problem, sample_plan(), fault));
        problem.stock[0].defects.push_back({place, Faces::lower});
        CHECK(has_fault(problem, sample_plan(), fault));
    }
}
