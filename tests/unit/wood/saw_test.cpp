// Which saw makes a cut. Library limits: the table saw rips pieces from 304.8 mm on, at most 609.6 mm wide,
// with a push block below 50.8 mm; its sled takes 609.6 mm across, the mitre saw 304.8 mm; one side of a
// crosscut is 203.2 mm long; sheets over 1524 x 1219.2 mm are broken down first.
#include <doctest/doctest.h>

#include <algorithm>

#include "tests/unit/wood/oak.hpp"
#include "tests/unit/wood/sound.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

const std::string ply = "wood ply = plywood\n";

std::string oak_board(int length, int width) {
    return "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: " + std::to_string(width) +
           "mm, length: " + std::to_string(length) + "mm}]";
}

std::string ply_sheet(int length, int width) {
    return "sheets: [{name: P1, wood: plywood, thickness: 12mm, length: " + std::to_string(length) +
           "mm, width: " + std::to_string(width) + "mm}]";
}

std::string oak_part(const std::string& name, int length, int width, int up = 0) {
    return stick(name + " of oak", "wide", {0, 0, up}, {length, width, 19});
}

std::string ply_part(const std::string& name, int length, int width, int up = 0) {
    return stick(name + " of ply", "wide", {0, 0, up}, {length, width, 12});
}

// Parts are milled from 100 mm on.
const std::string short_milling = "jointer: {shortest: 100 mm}\nplaner: {shortest: 100 mm}\n";

}  // namespace

TEST_SUITE("unit/wood") {
    TEST_CASE("boards are ripped at the table saw and crosscut at the mitre saw as far as it reaches") {
        const CompiledDesign design = compile_body(oak + oak_part("shelf", 600, 250));
        for (const auto& [width, saw] : {std::pair(280, "mitre_saw"), std::pair(310, "table_saw")}) {
            const PlannedWood planned = plan_from(design.piece(), oak_board(1000, width));
            check_sound(planned, design.piece());
            bool ripped = false;
            bool crosscut = false;
            for (const PlannedCut& cut : planned.board("A1").cuts) {
                (cut.crosscut ? crosscut : ripped) = true;
                const bool whole = cut.of == 0;
                if (whole && cut.crosscut) CHECK(cut.saw == saw);
                if (!cut.crosscut) CHECK(cut.saw == "table_saw");
            }
            CHECK(ripped);
            CHECK(crosscut);
        }
    }

    TEST_CASE("short parts come off strips that are long enough to rip") {
        const CompiledDesign design =
            compile_body(oak + oak_part("block", 180, 60) + oak_part("cleat", 180, 60, 100) +
                         oak_part("stop", 180, 60, 200) + oak_part("key", 180, 60, 300));
        const auto planned = [&](const std::string& milling) {
            return plan_from(design.piece(), oak_board(440, 140), short_milling + milling);
        };
        const PlannedWood usual = planned("");
        CHECK(usual.report.empty());
        CHECK(usual.plan.complete());
        check_sound(usual, design.piece());
        CHECK_FALSE(usual.board("A1").cuts.front().crosscut);
        // Where any length can be ripped, the pieces are crosscut first, to 206 mm.
        CHECK(planned("saw_limits: {shortest_rip: 1 mm}\n").board("A1").cuts.front().crosscut);
    }

    TEST_CASE("what is too small for any machine is cut by hand, and said so") {
        const CompiledDesign design =
            compile_body(ply + ply_part("block", 100, 100) + ply_part("foot", 100, 100, 100));
        const PlannedWood planned = plan_from(design.piece(), ply_sheet(250, 150));
        CHECK(planned.plan.complete());
        CHECK(planned.report.find("W0903 P1: what cut 1 is made in, ") == 0);
        CHECK(planned.board("P1").cuts.front().care == CutCare::by_hand);
        check_sound(planned, design.piece());
        const PlannedWood longer = plan_from(design.piece(), ply_sheet(600, 150));
        CHECK(longer.report.empty());
        check_sound(longer, design.piece());
    }

    TEST_CASE("a sheet is broken down by the circular saw and cut up at the table saw") {
        const CompiledDesign design =
            compile_body(ply + ply_part("door", 700, 500) + ply_part("shelf", 700, 400, 100));
        const PlannedWood planned = plan_from(design.piece(), ply_sheet(2440, 1220));
        const std::vector<PlannedCut>& cuts = planned.board("P1").cuts;
        REQUIRE(cuts.size() > 1);
        CHECK(cuts.front().saw == "circular_saw");
        CHECK(std::ranges::count(cuts, "table_saw", &PlannedCut::saw) > 0);
        check_sound(planned, design.piece());
        // A blade that takes more than the plan leaves for it stays where it is.
        const PlannedWood wide =
            plan_from(design.piece(), ply_sheet(2440, 1220), "kerfs: {table_saw: 4 mm}\n");
        for (const PlannedCut& cut : wide.board("P1").cuts) CHECK(cut.saw == "circular_saw");
        check_sound(wide, design.piece());
    }

    TEST_CASE("what is cut off short lies before no stop") {
        // 40 mm go with the first end, then 625.4 of the 800 are the slat's.
        const CompiledDesign design = compile_body(oak + oak_part("slat", 600, 100));
        const std::string board =
            "boards: [{name: A1, wood: white_oak, thickness: 25mm, width: 106.5mm, length: 800mm, "
            "checks: \"40 mm, 0 mm\"}]";
        const auto cares = [&](const std::string& milling) {
            const PlannedWood planned = plan_from(design.piece(), board, milling);
            check_sound(planned, design.piece());
            std::vector<CutCare> all;
            for (const PlannedCut& cut : planned.board("A1").cuts) all.push_back(cut.care);
            return all;
        };
        CHECK(cares("") == std::vector{CutCare::no_stop, CutCare::none});
        CHECK(cares("saws: {crosscut: band_saw}\n") == std::vector{CutCare::none, CutCare::none});
    }

    TEST_CASE("narrow rips want a push block, and a saw without limits takes all that is meant for it") {
        const CompiledDesign design = compile_body(oak + oak_part("slat", 600, 30));
        const PlannedWood planned = plan_from(design.piece(), oak_board(700, 120));
        const auto rip = std::ranges::find(planned.board("A1").cuts, false, &PlannedCut::crosscut);
        REQUIRE(rip != planned.board("A1").cuts.end());
        CHECK(rip->care == CutCare::narrow);
        check_sound(planned, design.piece());
        const PlannedWood band =
            plan_from(design.piece(), oak_board(700, 120), "saws: {rip: band_saw, crosscut: band_saw}\n");
        for (const PlannedCut& cut : band.board("A1").cuts) {
            CHECK(cut.saw == "band_saw");
            CHECK(cut.care == CutCare::none);
        }
        check_sound(band, design.piece());
    }
}
