// The order of work as it is written out.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "backends/steps/writers.hpp"
#include "backends/work_words.hpp"
#include "tests/support/sample_piece.hpp"
#include "tests/unit/workplan/planned.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE("unit/backends") {
    TEST_CASE("a step lists the parts that it is done to, once each") {
        const Piece piece = sample_piece();
        const WorkPlan plan = planned(piece);
        const auto parts = [&](const std::string& work, const std::string& name) {
            return joined(operation_parts(piece, plan.operations[place(plan, work, name)]));
        };
        CHECK(parts("mortise_and_tenon", "cut_mortise") == "A1 leg x 1, A2 leg x 1");
        // One rail with two tenons is one part.
        CHECK(parts("mortise_and_tenon", "cut_tenon") == "B front rail x 1");
        CHECK(parts("", "choose_boards") == "all parts");
        // The same words on both legs are one step.
        CHECK(parts("taper", "form") == "A1 leg x 1, A2 leg x 1");
        const Operation& tenon = plan.operations[place(plan, "mortise_and_tenon", "cut_tenon")];
        CHECK(machine_words(tenon.machine, {}, tenon.settings, piece.style) ==
              "table saw: height 1/4\", stop 1 1/8\"");
        CHECK(operation_title(tenon) == "Mortise and tenon: cut tenon");
    }

    TEST_CASE("steps as Markdown") {
        const Piece piece = sample_piece();
        const std::string text = steps_markdown(piece, planned(piece));
        CHECK(
            text.starts_with("# Watch bench: order of work\n\n**Caution.** Read each machine's own manual"));
        CHECK(text.find("machine's own manual", text.find("machine's own manual") + 9) == std::string::npos);
        const std::size_t tenon = text.find(
            "Mortise and tenon: cut tenon** (B front rail x 1)\n"
            "  - Saw the shoulders, then the cheeks.\n"
            "  - Try the setting on a spare of the same stock first.\n"
            "  - Table saw: height 1/4\", stop 1 1/8\" (set-up ");
        CHECK(tenon != std::string::npos);
        CHECK(text.find("  - **Caution:** Use the mitre gauge or sled.\n", tenon) != std::string::npos);
        CHECK(text.find("- [ ] **1. Choose boards**") != std::string::npos);
        CHECK(text.find("Put on oil varnish, coat 1 of 3") != std::string::npos);
        // An order that is plain within one joint is not explained.
        CHECK(text.find("the knife lines say where it ends") == std::string::npos);
        CHECK(text.find("## Set-ups") != std::string::npos);
    }

    TEST_CASE("what is done stands ticked before what is left") {
        Piece piece = sample_piece();
        for (const char* stage : {"mill", "lay_out", "joinery", "shaping"})
            piece.done.push_back({"", stage, {}, {}});
        const WorkPlan plan = planned(piece);
        const std::string text = steps_markdown(piece, plan);
        CHECK(text.find("No machine has to be set up.") != std::string::npos);
        CHECK(text.find("## Done\n\n- [x] Choose boards (all parts)\n") != std::string::npos);
        CHECK(text.find("- [x] Mortise and tenon: cut tenon (B front rail x 1)\n") <
              text.find("- [ ] **1. "));
        CHECK(text.find("## Set-ups") == std::string::npos);
        const auto json = nlohmann::json::parse(steps_json(piece, plan));
        CHECK(json["done"].size() == plan.done.size());
        CHECK(json["done"][0]["name"] == "choose_boards");
        CHECK(json["steps"].size() + json["done"].size() == planned(sample_piece()).operations.size());
    }

    TEST_CASE("steps as JSON carry every reason") {
        const Piece piece = sample_piece();
        const auto json = nlohmann::json::parse(steps_json(piece, planned(piece)));
        CHECK(json["steps"].size() == planned(piece).operations.size());
        CHECK(json.dump().find("the knife lines say where it ends") != std::string::npos);
        for (const auto& step : json["steps"]) {
            for (const auto& after : step["after"]) CHECK(after["step"] < step["number"]);
        }
        CHECK(json["steps"][0]["number"] == 1);
        CHECK(json["glue_ups"].size() == 1);
        CHECK(json["sums"]["set_ups"] == json["sums"]["set_ups_at_least"]);
    }
}
