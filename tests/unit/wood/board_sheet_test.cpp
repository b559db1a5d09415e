// The drawing of a board with its cuts.
#include <doctest/doctest.h>

#include <fmt/format.h>

#include "tests/support/wood.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/drawing/sheet_check.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

struct Many {
    int length, width, count;
};

// So many parts that some are too small for their letter, and some cuts for their number.
std::string many_parts() {
    std::string text = "wood ply = plywood\n";
    int number = 0;
    for (const Many& each :
         {Many{700, 500, 2}, {700, 400, 3}, {380, 300, 4}, {520, 140, 6}, {150, 120, 3}, {300, 90, 4}}) {
        for (int i = 0; i < each.count; ++i, ++number)
            text += stick(fmt::format("p{} of ply", number), "wide", {0, 0, 30 * number},
                          {each.length, each.width, 12});
    }
    return text;
}

}  // namespace

TEST_SUITE("unit/wood") {
    TEST_CASE("a sheet cut up small keeps to its frame, no text on text or on a line") {
        const CompiledDesign design = compile_body(many_parts());
        const PlannedWood planned = plan_from(
            design.piece(),
            "sheets: [{name: P1, wood: plywood, thickness: 12mm, length: 2440mm, width: 1220mm, trim: "
            "10mm, count: 2}]");
        REQUIRE(planned.plan.complete());
        CHECK(planned.report.empty());  // nothing is cut by hand
        Making making(design.piece());
        making.input.wood = &planned.plan;
        for (const char* format : {"a4", "letter"}) {
            const packet::Context context = making.context({{"sheet", format}, {"projection", "first"}});
            const std::vector<packet::Draft> drafts = packet::board_sheets(context);
            CHECK(!drafts.empty());
            for (const packet::Draft& draft : drafts) {
                for (const std::string& fault : faults_of(draft.sheet, *making.fonts)) FAIL_CHECK(fault);
            }
        }
    }
}
