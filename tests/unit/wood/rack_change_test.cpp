#include "compiler/stock/plan/rack_change.hpp"

#include <doctest/doctest.h>

using namespace rodwright;

namespace {

PlannedBoard board(const std::string& origin) {
    PlannedBoard result;
    result.name = result.origin = origin;
    result.length = 1000;
    result.width = result.far_width = 200;
    result.regions = {{PlanRegion::Kind::section, {0, 0, 1000, 200}, "", {}},
                      {PlanRegion::Kind::waste, {0, 0, 100, 200}, "", {}},
                      {PlanRegion::Kind::offcut, {103, 0, 897, 150}, "", {}}};
    return result;
}

}  // namespace

TEST_SUITE("unit/wood") {
    TEST_CASE("boards alike are counted, their offcuts are listed where they lie") {
        WoodPlan plan;
        plan.boards = {board("A1"), board("A1"), board("B")};
        const RackChange change = change_of(plan);
        REQUIRE(change.used.size() == 2);
        CHECK(change.used[0].name == "A1");
        CHECK(change.used[0].count == 2);
        CHECK(change.used[1].count == 1);
        REQUIRE(change.left.size() == 3);
        CHECK(change.left[0].of == "A1");
        CHECK(change.left[0].from_end == 103);
        CHECK(change.left[0].length == 897);
        CHECK(change.left[0].width == 150);
    }

    TEST_CASE("a sheet whose grain runs across it is turned back") {
        WoodPlan plan;
        plan.boards = {board("P1")};
        plan.boards[0].grain_across = true;
        const RackChange change = change_of(plan);
        CHECK(change.left.at(0).from_end == 0);
        CHECK(change.left.at(0).from_edge == 103);
        CHECK(change.left.at(0).length == 150);
        CHECK(change.left.at(0).width == 897);
    }

    TEST_CASE("of what is bought the offcuts alone come into the rack") {
        WoodPlan plan;
        plan.boards = {board(""), board("")};
        plan.boards[0].species = "cherry";
        plan.boards[0].cut = "flat";
        plan.boards[0].thickness = 25;
        plan.boards[1].species = "plywood";
        plan.boards[1].sheet = plan.boards[1].grain_across = true;
        const RackChange change = change_of(plan);
        CHECK(change.used.empty());
        CHECK(change.left.empty());
        REQUIRE(change.left_of_bought.size() == 1);
        CHECK(change.left_of_bought[0].species == "cherry");
        CHECK(change.left_of_bought[0].cut == "flat");
        CHECK(change.left_of_bought[0].thickness == 25);
        CHECK(change.left_of_bought[0].length == 897);
        CHECK(change.left_of_bought[0].width == 150);
        CHECK(change.left_of_bought[0].far_width == 150);
        REQUIRE(change.left_of_bought_sheets.size() == 1);
        CHECK(change.left_of_bought_sheets[0].grain == FaceGrain::along_width);
        CHECK(change.left_of_bought_sheets[0].length == 150);
        CHECK(change.left_of_bought_sheets[0].width == 897);
    }
}
