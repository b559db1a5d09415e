// Which work comes after which, on a bench with two legs, a rail and a top.
#include <doctest/doctest.h>

#include "tests/support/sample_piece.hpp"
#include "tests/unit/workplan/planned.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

std::string words(const Phrase& phrase) {
    return read_out(phrase, LengthStyle{});
}

Diagnostics circle_of(const Piece& piece, const WorkData& data = embedded_work_data()) {
    Diagnostics diagnostics;
    CHECK_FALSE(plan_work(piece, data, std::nullopt, {}, diagnostics));
    return diagnostics;
}

bool shares_part(const Operation& a, const Operation& b) {
    return std::ranges::any_of(
        a.parts, [&](PartId part) { return std::ranges::find(b.parts, part) != b.parts.end(); });
}

}  // namespace

TEST_SUITE("unit/workplan") {
    TEST_CASE("reasons lead backwards, and on each part stages do not come back") {
        const WorkPlan plan = planned(sample_piece());
        for (std::size_t i = 0; i < plan.operations.size(); ++i) {
            for (const WorkReason& reason : plan.operations[i].after) CHECK(reason.after < i);
            for (std::size_t j = 0; j < i; ++j) {
                if (shares_part(plan.operations[i], plan.operations[j]))
                    CHECK(plan.operations[j].stage <= plan.operations[i].stage);
            }
        }
        CHECK(plan.stages.size() == 8);
        CHECK(plan.stages[0].because.empty());
        const auto shaping = std::ranges::find(plan.stages, Stage::shaping, &StageNote::stage);
        REQUIRE(shaping != plan.stages.end());
        CHECK(shaping->because.find("square faces") != std::string::npos);
    }

    TEST_CASE("joints' own order wins over the order they are written in") {
        const WorkPlan plan = planned(sample_piece());
        const std::string joint = "mortise_and_tenon";
        const std::size_t mortise = place(plan, joint, "cut_mortise");
        const std::size_t tenon = place(plan, joint, "cut_tenon");
        CHECK(mortise < tenon);
        const auto& after = plan.operations[tenon].after;
        const auto reason = std::ranges::find_if(after, [&](const WorkReason& each) {
            return each.after == mortise &&
                   words(each.because) == "the chisel fixes the width of the mortise";
        });
        REQUIRE(reason != after.end());
        CHECK(reason->shown);
        CHECK(place(plan, joint, "lay_out") < mortise);
        CHECK(place(plan, "", "dry_fit") < place(plan, "", "glue_up"));
        CHECK(tenon < place(plan, "taper", "form"));
        // Gluing is part of the glue-up.
        CHECK(text_of(plan.operations[place(plan, "", "glue_up")]).find("Mortise and tenon: ") !=
              std::string::npos);
    }

    TEST_CASE("work that must follow finishing comes after the last coat, and waits until it is dry") {
        const WorkPlan plan = planned(sample_piece());
        const std::size_t fasten = place(plan, "buttons", "fasten");
        CHECK(fasten == plan.operations.size() - 1);
        CHECK(plan.operations[fasten].stage == Stage::fastening);
        CHECK(count_of(plan, "coat") == 3);
        const Operation& last_coat = plan.operations[fasten - 1];
        CHECK(last_coat.name == "coat");
        CHECK(last_coat.wait == 24 * 3600);
        CHECK(plan.operations[fasten].time.begin >= last_coat.time.end + 24 * 3600);
        CHECK(std::ranges::any_of(plan.operations[fasten].after, [&](const WorkReason& reason) {
            return words(reason.because) == "the base cannot be reached later" && reason.shown &&
                   reason.after == fasten - 1;
        }));
        // The buttons' definition has no step lay_out: the stage is meant, and the slots are cut after it.
        CHECK(plan.operations[place(plan, "buttons", "cut_slots")].stage == Stage::joinery);
    }

    TEST_CASE("a glued panel waits for its glue while other parts go on") {
        const WorkPlan plan = planned(sample_piece());
        const Operation& glued = plan.operations[place(plan, "", "glue_panels")];
        const Operation& planed = plan.operations[place(plan, "", "surface_panels")];
        // The machine may be set up in the last minutes of the wait.
        CHECK(planed.time.begin + planed.labour.set_up >= glued.time.end + 24 * 3600);
        const auto first = std::ranges::find(plan.operations, "plane_thickness", &Operation::name);
        REQUIRE(first != plan.operations.end());
        CHECK(first->time.end < planed.time.begin);
    }

    TEST_CASE("steps that wait for each other are reported with their names") {
        Piece piece = sample_piece();
        piece.joint_kinds[0].work.steps[2].after.push_back({"fit", ""});
        const Diagnostics diagnostics = circle_of(piece);
        REQUIRE(diagnostics.list().size() == 1);
        CHECK(diagnostics.list()[0].code == Code::order_cycle);
        CHECK(diagnostics.list()[0].message ==
              "these steps wait for each other: `mortise_and_tenon.cut_tenon`, "
              "`mortise_and_tenon.cut_mortise`, "
              "`mortise_and_tenon.fit`");
        Piece own = sample_piece();
        own.joint_kinds[0].work.steps[0].after.push_back({"lay_out", ""});
        CHECK(circle_of(own).list().at(0).message ==
              "these steps wait for each other: `mortise_and_tenon.lay_out`");
    }

    TEST_CASE("a rule that the design contradicts is named") {
        WorkData data = embedded_work_data();
        const WorkSelector tenon{std::nullopt, "mortise_and_tenon", "cut_tenon"};
        const WorkSelector mortise{std::nullopt, "mortise_and_tenon", "cut_mortise"};
        const WorkSelector flatten{std::nullopt, "", "flatten_face"};
        // The library's rules do not go against the stages; the maker's own are meant.
        data.order.rules.push_back({tenon, flatten, "of a whim", {}, false});
        Diagnostics silent;
        CHECK(plan_work(sample_piece(), data, std::nullopt, {}, silent));
        CHECK(silent.list().empty());
        data.order.rules.back().own = true;
        const Diagnostics own = circle_of(sample_piece(), data);
        REQUIRE(own.list().size() == 1);
        CHECK(std::ranges::find(own.list()[0].notes,
                                "your rule has mortise and tenon cut tenon before flatten face, "
                                "because of a whim") != own.list()[0].notes.end());
        data.order.rules.pop_back();
        data.order.rules.push_back({tenon, mortise, "somebody likes it so", {}, false});
        Piece piece = sample_piece();
        piece.joint_kinds[0].work.steps[1].member = "";  // both on the same parts
        piece.joint_kinds[0].work.steps[2].member = "";
        const Diagnostics diagnostics = circle_of(piece, data);
        REQUIRE(diagnostics.list().size() == 1);
        const std::vector<std::string>& notes = diagnostics.list()[0].notes;
        CHECK(
            std::ranges::find(notes,
                              "a rule has mortise and tenon cut tenon before mortise and tenon cut mortise, "
                              "because somebody likes it so") != notes.end());
    }

    TEST_CASE("of two steps of one name each means the other, and a circle of them names both") {
        Piece piece = sample_piece();
        std::vector<StepTemplate>& steps = piece.joint_kinds[0].work.steps;
        StepTemplate again = steps[2];
        again.text = "Cut the haunch's pocket.";
        again.after = {{"cut_mortise", ""}};
        steps[2].where = {FileId{0}, 10, 20};
        again.where = {FileId{0}, 30, 40};
        steps.insert(steps.begin(), again);
        const auto with_text = [](const WorkPlan& plan, const std::string& text) {
            return std::ranges::find_if(
                       plan.operations,
                       [&](const Operation& each) { return text_of(each).starts_with(text); }) -
                   plan.operations.begin();
        };
        const WorkPlan plan = planned(piece);
        CHECK(with_text(plan, "Cut the mortise 1/4\" wide.") < with_text(plan, "Cut the haunch's pocket."));
        steps[3].after.push_back({"cut_mortise", ""});
        const Diagnostics circle = circle_of(piece);
        REQUIRE(circle.list().size() == 1);
        CHECK(circle.list()[0].primary == again.where);
        REQUIRE(circle.list()[0].labels.size() == 1);
        CHECK(circle.list()[0].labels[0].span == steps[3].where);
    }

    TEST_CASE("a definition may wait for another definition's step on the same part") {
        Piece piece = sample_piece();
        piece.joint_kinds[0].work.steps[2].after.push_back({"taper.form", "the wedge must be off first"});
        const WorkPlan plan = planned(piece);
        CHECK(place(plan, "taper", "form") < place(plan, "mortise_and_tenon", "cut_mortise"));
    }

    TEST_CASE("the same reason after two steps is told once, of the later one") {
        Piece piece = sample_piece();
        // Its mortises are another step, its tenons the same one.
        JointKind other = piece.joint_kinds[0];
        other.work.steps[2].text = "Cut the mortise 5/16\" wide.";
        piece.joint_kinds.push_back(other);
        const WorkPlan plan = planned(piece);
        const std::string because = "the chisel fixes the width of the mortise";
        const Operation& tenon = plan.operations[place(plan, "mortise_and_tenon", "cut_tenon")];
        CHECK(std::ranges::count_if(
                  tenon.after, [&](const WorkReason& each) { return words(each.because) == because; }) == 1);
    }

    TEST_CASE("in stages, none begins before the one before it is done on all parts") {
        Diagnostics diagnostics;
        WorkOptions options;
        options.in_stages = true;
        const std::optional<WorkPlan> plan =
            plan_work(sample_piece(), embedded_work_data(), std::nullopt, options, diagnostics);
        REQUIRE(plan);
        CHECK(std::ranges::is_sorted(plan->operations, {}, &Operation::stage));
        CHECK(plan->operations.size() == planned(sample_piece()).operations.size());
    }
}
