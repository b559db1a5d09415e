#include "compiler/quantity/quantity.hpp"
#include "compiler/stock/rough/rough.hpp"
#include "tests/unit/rough/library_milling.hpp"
#include "tests/unit/rough/sizes_of.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// A board of ash, 600 mm long and 20 mm thick.
CompiledDesign board(int width, const std::string& more = "") {
    return compile_body("wood ash = white_ash\n" +
                        stick("leaf of ash", "wide", {0, 0, 0}, {600, width, 20}, more));
}

RoughSizes sizes_of_board(int width, const std::string& more = "") {
    return rough_sizes(board(width, more).piece(), library_milling());
}

PanelNeed panel_of_width(const Rational& width) {
    PanelNeed panel;
    panel.size = {{600, width, 20}};
    panel.narrowest = 50;
    panel.widest = 150;
    return panel;
}

}  // namespace

TEST_SUITE("unit/rough") {
    TEST_CASE("a glued panel is no blank, and says what the design asks of its boards") {
        const RoughSizes open = sizes_of_board(400, "glued from boards");
        CHECK(open.blanks.empty());
        REQUIRE(open.panels.size() == 1);
        CHECK_FALSE(open.panels[0].suggested);
        CHECK_FALSE(open.panels[0].staves);
        CHECK_FALSE(open.panels[0].alternating);
        CHECK(open.panels[0].count == 1);
        CHECK(open.panels[0].size == Vector{{ratio(6254, 10), ratio(4127, 10), ratio(215875, 10000)}});
        CHECK(open.panels[0].thickness_class == "4/4");  // 20 of 20.6375
        CHECK(open.panels[0].narrowest == inches(2));
        CHECK(open.panels[0].widest == inches(6));
        // 412.7 mm is more than 12 1/2 in.
        REQUIRE(open.panels[0].reasons.size() == 4);
        CHECK(open.panels[0].reasons[2].starts_with("wider than the 317.5 mm that the planer takes"));

        const RoughSizes said = sizes_of_board(400, "glued from 5 boards, each 70mm to 90mm alternating");
        REQUIRE(said.panels.size() == 1);
        CHECK(said.panels[0].staves == 5);
        CHECK(said.panels[0].alternating);
        CHECK(said.panels[0].narrowest == 70);
        CHECK(said.panels[0].widest == 90);
        CHECK(stave_counts(said.panels[0]).fewest == 5);
        CHECK(stave_counts(said.panels[0]).most == 5);
    }

    TEST_CASE("a part wider than the jointer is a blank, with a panel as the other way") {
        // 8 in = 203.2 mm; the blank is 6.35 mm wider than the part.
        const RoughSizes fits = sizes_of_board(196);
        CHECK(fits.blanks.size() == 1);
        CHECK(fits.panels.empty());
        const RoughSizes wide = sizes_of_board(197);
        REQUIRE(wide.blanks.size() == 1);
        REQUIRE(wide.panels.size() == 1);
        CHECK(wide.panels[0].suggested);
        CHECK(wide.panels[0].size[Axis::deep] == ratio(2097, 10));
        CHECK(wide.blanks[0].reasons.back() ==
              "wider than the ~203 mm that the jointer takes: glue it up, or flatten it by other means");
    }

    TEST_CASE("staves of a panel whose ends the planer spoils, and of a short one") {
        const CompiledDesign design = board(400, "glued from boards");
        const RoughSizes sniped =
            rough_sizes(design.piece(), own_milling("planer: {snipes: true, snipe: 50mm}"));
        CHECK(sniped.panels[0].size[Axis::wide] == 700);
        const RoughSizes brief = rough_sizes(design.piece(), own_milling("planer: {shortest: 800mm}"));
        CHECK(brief.panels[0].size[Axis::wide] == 800);
    }

    TEST_CASE("how many staves") {
        const auto counts = [](const Rational& width) {
            const StaveCounts found = stave_counts(panel_of_width(width));
            return std::pair(found.fewest, found.most);
        };
        CHECK(counts(400) == std::pair(3, 8));  // 133.3 to 50
        CHECK(counts(450) == std::pair(3, 9));  // 150 to 50
        CHECK(counts(451) == std::pair(4, 9));
        CHECK(counts(40) == std::pair(1, 1));  // narrower than any stave
        CHECK(counts(100'000'000) == std::pair(1000, 1000));
        // 160 mm would need two of 80, which is too narrow here: too narrow rather than too wide.
        PanelNeed strict = panel_of_width(160);
        strict.narrowest = 100;
        CHECK(stave_counts(strict).fewest == 2);
        CHECK(stave_counts(strict).most == 2);
    }

    TEST_CASE("staves are sawn wider by what jointing takes") {
        PanelLimits limits;
        limits.glued_edge = 2;
        CHECK(sawn_stave_width(panel_of_width(400), 4, limits) == 104);
    }
}
