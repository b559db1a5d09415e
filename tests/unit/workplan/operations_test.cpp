// What work a piece asks for, and with which machines and cutters it is done.
#include <doctest/doctest.h>

#include "compiler/workplan/duration.hpp"
#include "tests/support/sample_piece.hpp"
#include "tests/unit/workplan/planned.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

WorkData with_shop(const std::string& yaml) {
    WorkData data = embedded_work_data();
    SourceManager sources;
    Diagnostics diagnostics;
    std::optional<Shop> shop = overlay_shop(data.shop, sources, sources.add("shop.yaml", yaml), diagnostics);
    REQUIRE(shop);
    data.shop = std::move(*shop);
    return data;
}

// The step that cuts the sample's mortise, with a cutter that is asked for.
Piece with_mortise_cutter(const Rational& size) {
    Piece piece = sample_piece();
    StepTemplate& mortise = piece.joint_kinds[0].work.steps[2];
    REQUIRE(mortise.name == "cut_mortise");
    mortise.machine = "mortiser";
    mortise.settings = {{"fence", "7/16\"", "1/4\" + 3/16\""}};
    mortise.where = {FileId{0}, 10, 20};
    mortise.cutter = ToolNeed::Alternative{"chisel", {{"", Quantity::length(size)}}};
    return piece;
}

}  // namespace

TEST_SUITE("unit/workplan") {
    TEST_CASE("general work is there only if there is something to do it to") {
        Piece piece = sample_piece();
        CHECK(count_of(planned(piece), "glue_panels") == 1);
        CHECK(count_of(planned(piece), "cut_sheets") == 0);
        piece.kinds[3].glued.reset();
        piece.woods[1].sheet = true;
        piece.finishes.clear();
        const WorkPlan plan = planned(piece);
        CHECK(count_of(plan, "glue_panels") == 0);
        CHECK(count_of(plan, "coat") == 0);
        CHECK(plan.operations[place(plan, "", "cut_sheets")].parts.size() == 1);
        CHECK(plan.operations[place(plan, "", "flatten_face")].parts.size() == 3);
        CHECK(planned(Piece{}).operations.empty());
    }

    TEST_CASE("stock is milled once for each size, at a setting that is that size") {
        const Piece piece = sample_piece();
        const WorkPlan plan = planned(piece);
        // Legs 1 1/2 in, rail 19 mm; the top is a panel.
        CHECK(count_of(plan, "plane_thickness") == 2);
        for (const Operation& operation : plan.operations) {
            if (operation.name != "plane_thickness") continue;
            REQUIRE(operation.settings.size() == 1);
            const Kind& kind = piece[operation.kinds[0].kind];
            REQUIRE(operation.settings[0].value.words.size() == 1);
            CHECK(std::get<Quantity>(operation.settings[0].value.words[0]).value == kind.size[Axis::tall]);
        }
        // The rail is cut as long as its tenons make it: 20 in and 1 1/8 in at each end.
        bool rail = false;
        for (const Operation& operation : plan.operations) {
            if (operation.name != "final_crosscut") continue;
            rail = rail || read_out(operation.settings.at(0).value, piece.style) == "22 1/4\"";
        }
        CHECK(rail);
    }

    TEST_CASE("work that differs in the names of parts only is one operation that names them all") {
        Piece piece = sample_piece();
        StepTemplate& cut = piece.joint_kinds[0].work.steps[2];
        cut.text.words = {"Cut for ", Phrase::NamedPart{"tenon", "front rail"}, "."};
        JointKind other = piece.joint_kinds[0];
        other.work.steps = {cut};
        other.work.steps[0].text.words = {"Cut for ", Phrase::NamedPart{"tenon", "back rail"}, "."};
        piece.joint_kinds.push_back(other);
        const WorkPlan two = planned(piece);
        CHECK(text_of(two.operations[place(two, "mortise_and_tenon", "cut_mortise")])
                  .starts_with("Cut for front rail or back rail."));
        piece.joint_kinds.back().work.steps[0].settings = {{"fence", "1/2\"", {}}};
        const WorkPlan apart = planned(piece);
        CHECK(count_of(apart, "cut_mortise") == 2);
    }

    TEST_CASE("work at the same machine, cutter and setting is one set-up") {
        Piece piece = with_mortise_cutter(inches(1, 4));
        JointKind other = piece.joint_kinds[0];
        other.work.steps = {other.work.steps[2]};
        other.work.steps[0].text = "Cut the second mortise.";
        piece.joint_kinds.push_back(other);
        const WorkPlan plan = planned(piece);
        std::vector<std::size_t> set_ups;
        for (const Operation& operation : plan.operations) {
            if (operation.name == "cut_mortise") set_ups.push_back(operation.set_up.value());
        }
        REQUIRE(set_ups.size() == 2);
        CHECK(set_ups[0] == set_ups[1]);
        CHECK(plan.set_ups[set_ups[0]].operations.size() == 2);
        CHECK(plan.set_ups[set_ups[0]].machine == "mortiser");
        CHECK(plan.sums.set_ups == plan.sums.set_ups_bound);
    }

    TEST_CASE("what the shop has not got is said, with another way") {
        const Piece piece = with_mortise_cutter(inches(1, 4));
        const WorkData data = with_shop("machines:\n  router: {holds: [straight_bit]}\n");
        Diagnostics diagnostics;
        const std::optional<WorkPlan> plan = plan_work(piece, data, std::nullopt, {}, diagnostics);
        REQUIRE(plan);
        const auto found = std::ranges::find_if(diagnostics.list(), [](const Diagnostic& each) {
            return each.message == "mortise and tenon: cut mortise: the shop has no mortiser";
        });
        REQUIRE(found != diagnostics.list().end());
        CHECK(found->code == Code::no_machine);
        CHECK(found->help.find("Rout the mortises") != std::string::npos);
        const Operation& mortise = plan->operations[place(*plan, "mortise_and_tenon", "cut_mortise")];
        CHECK(mortise.machine == "router");
        CHECK(text_of(mortise).find("No mortiser here. Rout the mortises") != std::string::npos);
    }

    TEST_CASE("a cutter of another size does where it can, and is said where it cannot") {
        const WorkData chisels = with_shop("tools:\n  chisel: [1/4 in, 1/2 in]\n");
        Diagnostics none;
        const std::optional<WorkPlan> smaller =
            plan_work(with_mortise_cutter(inches(5, 16)), chisels, std::nullopt, {}, none);
        REQUIRE(smaller);
        CHECK(none.list().empty());
        const Operation& mortise = smaller->operations[place(*smaller, "mortise_and_tenon", "cut_mortise")];
        CHECK(mortise.cutter->sizes[0].second.value == inches(1, 4));
        CHECK(text_of(mortise).find(
                  "The shop has no 5/16\" chisel: take the 1/4\" one in more than one pass.") !=
              std::string::npos);
        Diagnostics missing;
        CHECK(plan_work(with_mortise_cutter(inches(1, 8)), chisels, std::nullopt, {}, missing));
        REQUIRE(missing.list().size() == 1);
        CHECK(missing.list()[0].code == Code::no_cutter);
        CHECK(missing.list()[0].help == "the nearest that it has is 1/4\"");
    }

    TEST_CASE("times as people say them") {
        CHECK(duration_words(40) == "40 s");
        CHECK(duration_words(25 * 60) == "25 min");
        CHECK(duration_words(3 * 3600 + 28 * 60) == "3 h 30 min");
        CHECK(duration_words(24 * 3600) == "24 h");
        CHECK(duration_words(52 * 3600) == "2 days 4 h");
        CHECK(duration_words(72 * 3600) == "3 days");
    }
}
