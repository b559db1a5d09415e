// The glue that a piece names.
#include <doctest/doctest.h>

#include "tests/support/design.hpp"
#include "tests/unit/workplan/planned.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

const std::string glued_frame = stick("post, handed wide", "tall", {355, 0, 0}, {45, 45, 300}) +
                                stick("rail", "wide", {400, 10, 120}, {200, 18, 60}) +
                                "join rail.left, rail.right to post with mortise_and_tenon\n";

}  // namespace

TEST_SUITE("unit/workplan") {
    TEST_CASE("times are those of the glue that the piece names, else of the usual one") {
        const Curing& curing = embedded_work_data().curing;
        CHECK(planned(compile_body(glued_frame).piece()).glue.name == curing.glue.name);
        const WorkPlan plan = planned(compile_body(glued_frame + "glue liquid_hide\n").piece());
        const Glue& hide = curing.glues.at("liquid_hide");
        REQUIRE(hide.clamp != curing.glue.clamp);
        CHECK(plan.glue.name == "liquid_hide");
        CHECK(plan.glue.open == static_cast<Seconds>(hide.open.get_d()));
        CHECK(text_of(plan.operations[place(plan, "", "glue_up")]).find("Leave it 12 h") !=
              std::string::npos);
    }

    TEST_CASE("a glue that nobody knows is told, with what was meant") {
        Diagnostics diagnostics;
        const Piece piece = compile_body(glued_frame + "glue liquid_hyde\n").piece();
        CHECK_FALSE(plan_work(piece, embedded_work_data(), std::nullopt, {}, diagnostics));
        REQUIRE(diagnostics.list().size() == 1);
        CHECK(diagnostics.list()[0].message == "there is no glue `liquid_hyde`");
        CHECK(diagnostics.list()[0].help == "did you mean `liquid_hide`?");
    }

    TEST_CASE("a piece has one glue") {
        CHECK(compile_body(glued_frame + "glue epoxy\nglue epoxy\n").report().find("E0203 ") !=
              std::string::npos);
        CHECK(compile_body(glued_frame + "glue epoxy, hot_hide\n").report().find("E0207 ") !=
              std::string::npos);
    }
}
