// The plans of the examples, from their own racks, and of random racks: all of them hold to the checker's
// rules.
#include <doctest/doctest.h>

#include <fmt/format.h>

#include <random>

#include "backends/boards/writers.hpp"
#include "tests/support/examples.hpp"
#include "tests/unit/wood/sound.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// Sanitizers make the search for plans some ten times slower.
#ifdef RODWRIGHT_SANITIZED
constexpr int rounds = 3;
const std::vector<cutting::Effort> efforts = {cutting::Effort::quick};
#else
constexpr int rounds = 16;
const std::vector<cutting::Effort> efforts = {cutting::Effort::quick, cutting::Effort::normal};
#endif

std::string random_board(std::mt19937& random, int number) {
    const auto pick = [&](int low, int high) {
        return std::uniform_int_distribution<int>(low, high)(random);
    };
    const int length = pick(500, 2600);
    const int width = pick(70, 260);
    std::string text =
        fmt::format("  - name: b-{}\n    wood: white_oak\n    thickness: {}mm\n    length: {}mm\n", number,
                    pick(1, 3) * 13, length);
    text += pick(0, 3) == 0 ? fmt::format("    width: {}mm to {}mm\n", width, width - pick(1, 40))
                            : fmt::format("    width: {}mm\n", width);
    if (pick(0, 2) == 0) text += fmt::format("    checks: {}mm, {}mm\n", pick(1, 60), pick(1, 60));
    if (pick(0, 3) == 0) text += fmt::format("    sapwood: {}mm\n", pick(1, 25));
    if (pick(0, 3) == 0) text += fmt::format("    count: {}\n", pick(2, 4));
    if (pick(0, 3) == 0) text += fmt::format("    bow: {}mm\n", pick(1, 8));
    if (pick(0, 1) == 0) {
        text += fmt::format("    defects: [{{from_end: {}mm, from_edge: {}mm, length: {}mm, width: {}mm}}]\n",
                            pick(0, length - 120), pick(0, width / 2), pick(5, 60), pick(5, 20));
    }
    return text;
}

std::string random_rack(std::mt19937& random) {
    std::string text = "money: crowns\nboards:\n";
    const int boards = std::uniform_int_distribution<int>(1, 6)(random);
    for (int i = 0; i < boards; ++i) text += random_board(random, i);
    if (random() % 2 == 0) {
        text +=
            "dealer:\n  lumber: [{wood: white_oak, thickness: [1 in, 2 in], width: 120mm to 260mm, "
            "length: 1000mm to 3000mm, price: 10}]\n";
    }
    return text;
}

std::string random_design(std::mt19937& random) {
    const auto pick = [&](int low, int high) {
        return std::uniform_int_distribution<int>(low, high)(random);
    };
    std::string text = "wood oak = white_oak\n";
    const int kinds = pick(1, 5);
    for (int i = 0; i < kinds; ++i) {
        const std::string row = pick(0, 2) == 0 ? fmt::format("[{}]", pick(2, 4)) : "";
        const std::string name = fmt::format("p{}", i);
        const int width = pick(20, 300);
        const std::string glued = width > 150 ? "glued from boards each 40mm to 150mm" : "";
        const std::string head = row.empty() ? name + " of oak" : name + row + " of oak";
        if (row.empty()) {
            text += stick(head, "wide", {0, 0, i * 60}, {pick(150, 900), width, pick(6, 40)}, glued);
        } else {
            text += fmt::format(
                "part {} {{ grain wide; left = piece.left; wide = {}mm; bottom = piece.bottom + {}mm; tall = "
                "{}mm; "
                "deep = 90mm\n{} }}\nspace {} along deep from piece.front to piece.back {{ ends = 1mm }}\n",
                head, pick(150, 900), i * 60, pick(6, 40), "", name);
        }
    }
    return text;
}

}  // namespace

TEST_SUITE("unit/wood") {
    TEST_CASE("the examples' plans are sound, at every effort") {
        for (const std::string& name : example_names()) {
            CAPTURE(name);
            const CompiledDesign design = compile_text(example_text(name));
            for (const cutting::Effort effort : efforts) {
                const PlannedWood planned =
                    plan_from(design.piece(), example_file(name, "rack.yaml"), example_milling(name), effort);
                CHECK(planned.plan.planned);
                CHECK_FALSE(planned.plan.boards.empty());
                check_sound(planned, design.piece());
            }
        }
    }

#ifndef RODWRIGHT_SANITIZED  // about results, not memory: the plans above and below run the same code
    TEST_CASE("two of the racks are enough, the tray's is short by its divider") {
        const auto missing = [](const std::string& name) {
            const CompiledDesign design = compile_text(example_text(name));
            return plan_from(design.piece(), example_file(name, "rack.yaml"), example_milling(name))
                .plan.missing;
        };
        CHECK(missing("keepers_table").empty());
        CHECK(missing("chart_shelf").empty());
        REQUIRE(missing("instrument_tray").size() == 1);
        CHECK(missing("instrument_tray")[0].label == "D");
    }

    TEST_CASE("the shelf's rack is tight: without any one of its boards it is not enough") {
        const CompiledDesign design = compile_text(example_text("chart_shelf"));
        PlannedWood planned = plan_from(design.piece(), example_file("chart_shelf", "rack.yaml"));
        for (std::size_t i = 0; i < planned.supply.rack->boards.size(); ++i) {
            WoodSupply less = planned.supply;
            less.rack->boards.erase(less.rack->boards.begin() + static_cast<std::ptrdiff_t>(i));
            Diagnostics unseen;
            CHECK_FALSE(plan_wood(design.piece(), less, cutting::Effort::quick, unseen).complete());
        }
    }

    TEST_CASE("the same plan comes out twice") {
        const CompiledDesign design = compile_text(example_text("keepers_table"));
        const std::string rack = example_file("keepers_table", "rack.yaml");
        const auto text = [&] { return boards_json(design.piece(), plan_from(design.piece(), rack).plan); };
        CHECK(text() == text());
    }
#endif

    TEST_CASE("random pieces and racks: whatever is planned is sound") {
        std::mt19937 random(20261125);
        std::size_t complete = 0;
        for (int i = 0; i < rounds; ++i) {
            const std::string text = random_design(random);
            const std::string rack = random_rack(random);
            CAPTURE(text);
            CAPTURE(rack);
            const CompiledDesign design = compile_body(text);
            const PlannedWood planned = plan_from(design.piece(), rack, "", efforts.back());
            complete += planned.plan.complete() ? 1U : 0U;
            check_sound(planned, design.piece());
        }
        if (rounds > 8) {  // of a few, all may come out alike
            CHECK(complete > 0);
            CHECK(complete < rounds);
        }
    }

    TEST_CASE("the checker finds what is wrong with a plan") {
        const CompiledDesign design = compile_text(example_text("keepers_table"));
        const PlannedWood planned =
            plan_from(design.piece(), example_file("keepers_table", "rack.yaml"), "", efforts.back());
        const auto faults = [&](const auto& spoil) {
            WoodPlan spoiled = planned.plan;
            spoil(spoiled);
            return faults_of(spoiled, design.piece(), planned.supply).size();
        };
        const auto nothing = [](WoodPlan&) {};
        const auto forgotten = [](WoodPlan& plan) { plan.boards.pop_back(); };
        const auto twice = [](WoodPlan& plan) { plan.boards.push_back(plan.boards.front()); };
        const auto shifted = [](WoodPlan& plan) { plan.boards.front().cuts.at(1).at += 5; };
        const auto no_kerf = [](WoodPlan& plan) { plan.boards.front().crosscut_kerf = 50; };
        const auto thin = [](WoodPlan& plan) { plan.boards.front().thickness = 5; };
        const auto small = [](WoodPlan& plan) {
            for (PlanRegion& region : plan.boards.front().regions) {
                if (region.piece) region.area.length -= 40;
            }
        };
        const auto other_saw = [](WoodPlan& plan) { plan.boards.front().cuts.front().saw = "hand_rip_saw"; };
        const auto no_saw = [](WoodPlan& plan) { plan.boards.front().cuts.front().saw.clear(); };
        const auto by_hand = [](WoodPlan& plan) { plan.boards.front().cuts.front().care = CutCare::by_hand; };
        const auto short_rip = [](WoodPlan& plan) {
            for (PlanRegion& region : plan.boards.front().regions) region.area.length /= 20;
        };
        CHECK(faults(nothing) == 0);
        CHECK(faults(other_saw) == 0);  // a hand saw cuts everything
        CHECK(faults(no_saw) > 0);
        CHECK(faults(by_hand) > 0);
        CHECK(faults(short_rip) > 0);
        CHECK(faults(forgotten) > 0);
        CHECK(faults(twice) > 0);
        CHECK(faults(shifted) > 0);
        CHECK(faults(no_kerf) > 0);
        CHECK(faults(thin) > 0);
        CHECK(faults(small) > 0);
    }
}
