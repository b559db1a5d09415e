#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

#include "backends/steps/step_list.hpp"
#include "backends/steps/writers.hpp"
#include "tests/support/sample_piece.hpp"

using namespace rodwright;

namespace {

StepList steps_of(const Piece& piece) {
    Diagnostics diagnostics;
    std::optional<StepList> list = make_steps(piece, diagnostics);
    REQUIRE(list);
    CHECK(diagnostics.list().empty());
    return std::move(*list);
}

// The place of a step that must be there once.
std::size_t place(const StepList& list, const std::string& work, const std::string& name) {
    CAPTURE(work);
    CAPTURE(name);
    const auto fits = [&](const Step& step) { return step.work == work && step.name == name; };
    REQUIRE(std::ranges::count_if(list.steps, fits) == 1);
    return static_cast<std::size_t>(std::ranges::find_if(list.steps, fits) - list.steps.begin());
}

bool has(const StepList& list, const std::string& name) {
    return std::ranges::find(list.steps, name, &Step::name) != list.steps.end();
}

std::optional<OrderRules> rules_of(const std::string& text, Diagnostics& diagnostics) {
    SourceManager sources;
    return read_order_rules(sources, sources.add("order.yaml", text), diagnostics);
}

}  // namespace

TEST_SUITE("unit/backends") {
    TEST_CASE("every edge of the steps leads backwards, and stages do not come back") {
        const StepList list = steps_of(sample_piece());
        for (std::size_t i = 0; i < list.steps.size(); ++i) {
            if (i > 0) CHECK(list.steps[i - 1].stage <= list.steps[i].stage);
            for (const StepReason& reason : list.steps[i].after) CHECK(reason.after < i);
        }
        CHECK(list.stages.size() == 8);
        CHECK(list.stages[0].because.empty());
        CHECK(list.stages[3].stage == Stage::shaping);
        CHECK(list.stages[3].because.find("square faces") != std::string::npos);
    }

    TEST_CASE("joints' own order wins over the order they are written in") {
        const StepList list = steps_of(sample_piece());
        const std::string joint = "mortise_and_tenon";
        const std::size_t mortise = place(list, joint, "cut_mortise");
        const std::size_t tenon = place(list, joint, "cut_tenon");
        CHECK(mortise < tenon);
        const auto& after = list.steps[tenon].after;
        const auto reason = std::ranges::find(after, mortise, &StepReason::after);
        REQUIRE(reason != after.end());
        CHECK(reason->because == "the chisel fixes the width of the mortise");
        CHECK(reason->shown);
        CHECK(place(list, joint, "lay_out") < mortise);
        CHECK(place(list, "", "dry_fit") < place(list, joint, "glue"));
        CHECK(place(list, joint, "glue") < place(list, "", "check_square"));
        CHECK(tenon < place(list, "taper", "form"));
    }

    TEST_CASE("work that must follow finishing comes after the last coat") {
        const StepList list = steps_of(sample_piece());
        const std::size_t fasten = place(list, "buttons", "fasten");
        CHECK(fasten == list.steps.size() - 1);
        CHECK(list.steps[fasten].stage == Stage::fastening);
        const auto& after = list.steps[fasten].after;
        CHECK(std::ranges::any_of(after, [&](const StepReason& reason) {
            return reason.because == "the base cannot be reached later" && reason.shown &&
                   reason.after == place(list, "", "coat");
        }));
        // The buttons' definition has no step lay_out: the stage is meant, and the slots are cut after it.
        CHECK(list.steps[place(list, "buttons", "cut_slots")].stage == Stage::joinery);
    }

    TEST_CASE("a step lists the parts that it is done to, once each") {
        const StepList list = steps_of(sample_piece());
        CHECK(step_parts(list.steps[place(list, "mortise_and_tenon", "cut_mortise")]) ==
              "A1 leg x 1, A2 leg x 1");
        // One rail with two tenons is one part.
        CHECK(step_parts(list.steps[place(list, "mortise_and_tenon", "cut_tenon")]) == "B front rail x 1");
        CHECK(step_parts(list.steps[place(list, "", "orient")]) == "all parts");
        // The same words on both legs are one step.
        CHECK(step_parts(list.steps[place(list, "taper", "form")]) == "A1 leg x 1, A2 leg x 1");
        CHECK(step_setting(list.steps[place(list, "mortise_and_tenon", "cut_tenon")]) ==
              "table saw: height 1/4\", stop 1 1/8\"");
        CHECK(step_title(list.steps[place(list, "mortise_and_tenon", "cut_tenon")]) ==
              "Mortise and tenon: cut tenon");
    }

    TEST_CASE("general work is there only if there is something to do it to") {
        Piece piece = sample_piece();
        CHECK(has(steps_of(piece), "glue_panels"));
        CHECK_FALSE(has(steps_of(piece), "cut_sheets"));
        piece.kinds[3].glued.reset();
        piece.woods[1].sheet = true;
        piece.finishes.clear();
        const StepList list = steps_of(piece);
        CHECK_FALSE(has(list, "glue_panels"));
        CHECK_FALSE(has(list, "coat"));
        CHECK(step_parts(list.steps[place(list, "", "cut_sheets")]) == "C top x 1");
        CHECK(step_parts(list.steps[place(list, "", "flatten_face")]) ==
              "A1 leg x 1, A2 leg x 1, B front rail x 1");
        CHECK(steps_of(Piece{}).steps.empty());
    }

    TEST_CASE("the finish is named in its step") {
        const StepList list = steps_of(sample_piece());
        CHECK(list.steps[place(list, "", "coat")].text ==
              "Finish with oil varnish, 3 coats; both faces of a panel alike, on the same day.");
    }

    TEST_CASE("steps that wait for each other are reported with their names") {
        Piece piece = sample_piece();
        piece.joint_kinds[0].work.steps[2].after.push_back({"fit", ""});
        Diagnostics diagnostics;
        CHECK_FALSE(make_steps(piece, diagnostics));
        REQUIRE(diagnostics.list().size() == 1);
        CHECK(diagnostics.list()[0].code == Code::order_cycle);
        CHECK(diagnostics.list()[0].message ==
              "these steps wait for each other: `mortise_and_tenon.cut_tenon`, "
              "`mortise_and_tenon.cut_mortise`, "
              "`mortise_and_tenon.fit`");
        Piece own = sample_piece();
        own.joint_kinds[0].work.steps[0].after.push_back({"lay_out", ""});
        Diagnostics of_itself;
        CHECK_FALSE(make_steps(own, of_itself));
        CHECK(of_itself.list().at(0).message ==
              "these steps wait for each other: `mortise_and_tenon.lay_out`");
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
        const auto with_text = [](const StepList& list, const std::string& text) {
            return std::ranges::find(list.steps, text, &Step::text) - list.steps.begin();
        };
        const StepList list = steps_of(piece);
        CHECK(with_text(list, "Cut the mortise 1/4\" wide.") < with_text(list, "Cut the haunch's pocket."));
        steps[3].after.push_back({"cut_mortise", ""});
        Diagnostics circle;
        CHECK_FALSE(make_steps(piece, circle));
        REQUIRE(circle.list().size() == 1);
        CHECK(circle.list()[0].message ==
              "these steps wait for each other: `mortise_and_tenon.cut_mortise`, "
              "`mortise_and_tenon.cut_mortise`");
        CHECK(circle.list()[0].primary == again.where);
        REQUIRE(circle.list()[0].labels.size() == 1);
        CHECK(circle.list()[0].labels[0].span == steps[3].where);
    }

    TEST_CASE("work that differs in the names of parts only is one step that names them all") {
        Piece piece = sample_piece();
        StepTemplate& fit = piece.joint_kinds[0].work.steps[2];
        fit.text.words = {"Cut for ", Phrase::NamedPart{"tenon", "front rail"}, "."};
        JointKind other = piece.joint_kinds[0];
        other.work.steps = {fit};
        other.work.steps[0].text.words = {"Cut for ", Phrase::NamedPart{"tenon", "back rail"}, "."};
        piece.joint_kinds.push_back(other);
        const StepList two = steps_of(piece);
        CHECK(two.steps[place(two, "mortise_and_tenon", "cut_mortise")].text ==
              "Cut for front rail or back rail.");
        piece.joint_kinds.back().work.steps[0].settings = {{"fence", "1/2\""}};
        const StepList apart = steps_of(piece);
        const auto is_mortise = [](const Step& step) { return step.name == "cut_mortise"; };
        CHECK(std::ranges::count_if(apart.steps, is_mortise) == 2);
    }

    TEST_CASE("the same reason after two steps is told once, of the later one") {
        Piece piece = sample_piece();
        // Its mortises are another step, its tenons the same one.
        JointKind other = piece.joint_kinds[0];
        other.work.steps[2].text = "Cut the mortise 5/16\" wide.";
        piece.joint_kinds.push_back(other);
        const StepList list = steps_of(piece);
        const Step& tenon = list.steps[place(list, "mortise_and_tenon", "cut_tenon")];
        std::vector<StepReason> told = tenon.after;
        std::erase_if(told, [](const StepReason& reason) { return !reason.shown; });
        REQUIRE(told.size() == 1);
        CHECK(list.steps[told[0].after].text == "Cut the mortise 5/16\" wide.");
        CHECK(std::ranges::count(tenon.after, told[0].because, &StepReason::because) == 2);
    }

    TEST_CASE("a definition may wait for another definition's step on the same part") {
        Piece piece = sample_piece();
        piece.joint_kinds[0].work.steps[2].after.push_back({"taper.form", "the wedge must be off first"});
        const StepList list = steps_of(piece);
        CHECK(place(list, "taper", "form") < place(list, "mortise_and_tenon", "cut_mortise"));
        CHECK(list.steps[place(list, "mortise_and_tenon", "glue")].stage == Stage::assembly);
    }

    TEST_CASE("steps as Markdown") {
        const std::string text = steps_markdown(steps_of(sample_piece()));
        CHECK(
            text.starts_with("# Watch bench: order of work\n\n**Caution.** Read each machine's own manual"));
        CHECK(text.find("manual", text.find("manual") + 6) == std::string::npos);
        const std::size_t tenon = text.find(
            "Mortise and tenon: cut tenon** (B front rail x 1)\n"
            "  - Saw the shoulders, then the cheeks.\n"
            "  - Table saw: height 1/4\", stop 1 1/8\"\n"
            "  - Try the setting on a spare first.\n");
        CHECK(tenon != std::string::npos);
        CHECK(text.find("  - **Caution:** Use the mitre gauge or sled.\n", tenon) != std::string::npos);
        CHECK(text.find("- [ ] **1. Choose boards**") != std::string::npos);
        // An order that is plain within one joint is not explained.
        CHECK(text.find("the knife lines say where it ends") == std::string::npos);
    }

    TEST_CASE("steps as JSON carry every reason") {
        const auto json = nlohmann::json::parse(steps_json(steps_of(sample_piece())));
        CHECK(json["steps"].size() == steps_of(sample_piece()).steps.size());
        CHECK(json.dump().find("the knife lines say where it ends") != std::string::npos);
        for (const auto& step : json["steps"]) {
            for (const auto& after : step["after"]) CHECK(after["step"] < step["number"]);
        }
        CHECK(json["steps"][0]["number"] == 1);
    }

    TEST_CASE("the rules that come with the compiler, and bad ones") {
        CHECK(embedded_order_rules().rules.size() >= 12);
        for (const OrderRule& rule : embedded_order_rules().rules) CHECK_FALSE(rule.because.empty());
        const std::string step = "caution: c\nsteps:\n  - {name: a, stage: mill, applies: all, text: t}\n";
        Diagnostics good;
        CHECK(
            rules_of(step + "rules:\n  - {before: a, after: '*.glue', because: b, source: common}\n", good));
        for (const char* rule : {"{before: a, after: saw, because: b, source: common}",
                                 "{before: a, after: '.glue', because: b, source: common}",
                                 "{before: a, because: b, source: common}"}) {
            CAPTURE(rule);
            Diagnostics diagnostics;
            CHECK_FALSE(rules_of(step + "rules:\n  - " + std::string(rule) + "\n", diagnostics));
            CHECK(diagnostics.errors() == 1);
        }
        Diagnostics stage;
        CHECK_FALSE(rules_of(
            "caution: c\nsteps:\n  - {name: a, stage: milling, applies: all, text: t}\nrules: []\n", stage));
        CHECK(stage.list().at(0).message == "there is no such stage");
    }
}
