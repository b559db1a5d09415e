// Steps that are done, and sizes that are taken from the work.
#include <doctest/doctest.h>

#include "tests/support/design.hpp"
#include "tests/unit/workplan/planned.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

const std::string frame =
    "piece \"Frame\" {\nunit mm\nwide = 400mm; deep = 60mm; tall = 300mm\n"
    "part post, handed wide {\ngrain tall\nwide = 40mm; deep = 40mm\nleft = piece.left; front = piece.front\n"
    "bottom = piece.bottom; top = piece.top\n}\n"
    "part rail {\ngrain wide\nleft = post[left].right; right = post[right].left\n"
    "front = piece.front + 10mm; deep = 20mm; bottom = piece.bottom; tall = 60mm\n}\n"
    "part slat {\ngrain wide\nleft = post[left].right; right = post[right].left\n"
    "front = piece.front + 10mm; deep = 20mm; bottom = piece.bottom + 150mm; tall = 60mm\n"
    "take wide from the work over 6mm\n}\n"
    "join rail.left, rail.right to post with mortise_and_tenon\n"
    "join slat.left, slat.right to post with housing\n}\n";

Piece piece_with(const std::string& lines) {
    return compile_text(frame + lines).piece();
}

std::vector<std::string> done_words(const WorkPlan& plan) {
    std::vector<std::string> words;
    for (const Operation& each : plan.done)
        words.push_back(each.name + " x" + std::to_string(each.parts.size()));
    return words;
}

Diagnostics troubles(const std::string& lines) {
    Diagnostics diagnostics;
    plan_work(piece_with(lines), embedded_work_data(), std::nullopt, {}, diagnostics);
    return diagnostics;
}

}  // namespace

TEST_SUITE("unit/workplan") {
    TEST_CASE("what is done is set aside, and the rest of the same work stays") {
        const WorkPlan plan = planned(piece_with("done flatten_face on post[left], rail\n"));
        CHECK(done_words(plan) == std::vector<std::string>{"flatten_face x2"});
        const Operation& left = plan.operations[place(plan, "", "flatten_face")];
        CHECK(left.parts.size() == 2);
        CHECK(left.times == 2);
        const WorkPlan whole = planned(piece_with(""));
        CHECK(left.labour.work * 2 == whole.operations[place(whole, "", "flatten_face")].labour.work);
    }

    TEST_CASE("a stage's word stands for all of its work, and without parts for all of them") {
        const WorkPlan plan = planned(piece_with("done mill\n"));
        CHECK(std::ranges::none_of(plan.operations,
                                   [](const Operation& each) { return each.stage == Stage::mill; }));
        CHECK(
            std::ranges::all_of(plan.done, [](const Operation& each) { return each.stage == Stage::mill; }));
        CHECK(plan.stages.front().stage == Stage::lay_out);
        CHECK(plan.stages.front().because.empty());
    }

    TEST_CASE("one step of one joint") {
        const WorkPlan plan = planned(piece_with("done mortise_and_tenon.cut_mortise\n"));
        CHECK(done_words(plan) == std::vector<std::string>{"cut_mortise x2"});
        CHECK(count_of(plan, "cut_mortise") == 0);
        for (const Operation& each : plan.operations) {
            for (const WorkReason& reason : each.after) CHECK(reason.after < plan.operations.size());
        }
    }

    TEST_CASE("a glue-up is done where one line names all of its parts") {
        const WorkPlan plan = planned(piece_with("done glue_up on post, rail, slat\n"));
        CHECK(count_of(plan, "glue_up") == 0);
        CHECK(plan.glue_ups.empty());
        REQUIRE(plan.done.size() == 1);
        CHECK_FALSE(plan.done.front().glue_up);
        const Diagnostics some = troubles("done glue_up on post\ndone glue_up on rail, slat\n");
        REQUIRE(some.list().size() == 2);
        CHECK(some.list().front().code == Code::nothing_done);
    }

    TEST_CASE("everything may be done") {
        const WorkPlan plan = planned(
            piece_with("done mill, lay_out, joinery, shaping, sanding, assembly, finishing, fastening\n"));
        CHECK(plan.operations.empty());
        CHECK(plan.set_ups.empty());
        CHECK(plan.sums.makespan == 0);
    }

    TEST_CASE("a mark that names no work is told, with what was meant") {
        const Diagnostics list = troubles("done flaten_face\ndone mortise_and_tenon.cut_tenon on slat\n");
        REQUIRE(list.list().size() == 2);
        CHECK(list.list()[0].message == "there is no step `flaten_face`");
        CHECK(list.list()[0].help == "did you mean `flatten_face`?");
        CHECK(list.list()[1].message == "`mortise_and_tenon.cut_tenon` is not done to these parts");
    }

    TEST_CASE("a part is cut over, and marked once the joints around it fit") {
        const WorkPlan plan = planned(piece_with(""));
        const std::size_t fitted = place(plan, "", "fit_to_work");
        CHECK(plan.operations[fitted].parts.size() == 1);
        CHECK(text_of(plan.operations[fitted]).find("Slat: length, ") != std::string::npos);
        CHECK(place(plan, "mortise_and_tenon", "cut_mortise") < fitted);
        CHECK(place(plan, "mortise_and_tenon", "cut_tenon") < fitted);
        CHECK(fitted < place(plan, "housing", "fit"));
        // Marking from an end comes after the end is there: then it is no work of the stage of laying out.
        for (const Operation& each : plan.operations) {
            const bool of_slat = std::ranges::includes(each.parts, plan.operations[fitted].parts);
            if (each.name == "lay_out" && of_slat) CHECK(each.stage == Stage::joinery);
        }
        // 320 between the posts, a third of 40 into each, and 6 over: told at the stop.
        const auto long_cut = std::ranges::find_if(plan.operations, [&](const Operation& each) {
            return each.name == "final_crosscut" && each.parts == plan.operations[fitted].parts;
        });
        REQUIRE(long_cut != plan.operations.end());
        CHECK(text_of(*long_cut).find("over the drawing") != std::string::npos);
        CHECK(static_cast<std::size_t>(long_cut - plan.operations.begin()) < fitted);
    }
}
