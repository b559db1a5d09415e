// The pieces of examples/, their rough sizes worked out by hand. Allowances of the library: 1/2 in at each
// end, 1/8 in at each edge, 1/16 in for both faces; the machines take 14 in and more.
#include "tests/support/examples.hpp"
#include "compiler/quantity/quantity.hpp"
#include "tests/unit/rough/library_milling.hpp"
#include "tests/unit/rough/sizes_of.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

class Example {
  public:
    explicit Example(const std::string& name)
        : design_(compile_text(example_text(name))),
          sizes_(rough_sizes(design_.piece(), library_milling())) {}

    const Blank& blank(const std::string& part) const { return blank_of(sizes_, design_, part); }
    const PanelNeed& panel(const std::string& part) const { return panel_of(sizes_, design_, part); }
    const RoughSizes& sizes() const { return sizes_; }

    // Parts in all blanks and panels; a suggested panel stands among the blanks too.
    int parts() const {
        int sum = 0;
        for (const Blank& each : sizes_.blanks) sum += each.count * static_cast<int>(each.kinds.size());
        for (const PanelNeed& each : sizes_.panels) sum += each.suggested ? 0 : each.count;
        return sum;
    }
    int parts_of_piece() const { return static_cast<int>(design_.piece().parts.size()); }

  private:
    CompiledDesign design_;
    RoughSizes sizes_;
};

Vector in_inches(const Rational& length, const Rational& width, const Rational& thickness) {
    const Rational inch = inches(1);
    return {{Rational(length * inch), Rational(width * inch), Rational(thickness * inch)}};
}

// Tenths of a micrometre, since the metric example's sums end there.
Rational millimetres(long ten_thousandths) {
    return ratio(ten_thousandths, 10000);
}

}  // namespace

TEST_SUITE("unit/rough") {
    TEST_CASE("rough sizes of the keeper's table") {
        const Example table("keepers_table");
        CHECK(table.parts() == table.parts_of_piece());
        // 29 1/2 - 13/16 = 28 11/16 tall, 1 3/4 square; + 1, + 1/4, + 1/16. A flat 8/4 board gives 1 3/4.
        CHECK(table.blank("leg[left front]").size == in_inches(ratio(475, 16), 2, ratio(29, 16)));
        CHECK(table.blank("leg[left front]").thickness_class == "8/4");
        CHECK(table.blank("leg[left front]").reasons ==
              std::vector<std::string>{
                  "length: 28 11/16\" + 1/2\" at each end to square it",
                  "width: 1 3/4\" + 1/8\" at each edge for jointing and ripping",
                  "thickness: 1 3/4\" + 1/16\" to clean up both faces; a flat 8/4 board gives 1 3/4\""});
        // Between the legs 21 - 2 x 1 1/2 - 2 x 1 3/4 = 14 1/2, and two tenons of 7/8: 16 1/4; + 1.
        CHECK(table.blank("side_apron[left]").size == in_inches(ratio(69, 4), ratio(19, 4), ratio(13, 16)));
        CHECK(table.blank("side_apron[left]").thickness_class == "4/4");
        // 42 - 2 x 2 - 2 x 1 3/4 = 34 1/2, tenons: 36 1/4; + 1.
        CHECK(table.blank("long_apron[front]").size == in_inches(ratio(149, 4), ratio(19, 4), ratio(13, 16)));
        CHECK(table.blank("stretcher[left]").size == in_inches(ratio(69, 4), 2, ratio(13, 16)));
        // Between the stretchers 42 - 2 x (2 + 3/16 + 3/4) = 36 1/8, and tails of 3/4 / 3 = 1/4: 36 5/8; 1/4
        // over, as it is marked from the work; + 1.
        CHECK(table.blank("slat[1]").size == in_inches(ratio(303, 8), ratio(3, 2), ratio(9, 16)));
        CHECK(table.blank("slat[1]").count == 9);
        CHECK(table.blank("slat[1]").thickness_class == "4/4");
        // 42 x 21 x 13/16; + 1, + 1/2, + 1/16. 21 1/2 in staves of 2 to 6 in.
        CHECK(table.panel("top").size == in_inches(43, ratio(43, 2), ratio(7, 8)));
        CHECK(table.panel("top").thickness_class == "4/4");
        CHECK_FALSE(table.panel("top").suggested);
        CHECK(stave_counts(table.panel("top")).fewest == 4);
        CHECK(stave_counts(table.panel("top")).most == 10);
        CHECK(sawn_stave_width(table.panel("top"), 4, library_milling().panels) == inches(89, 16));
        CHECK(table.sizes().panels.size() == 1);
    }

    TEST_CASE("rough sizes of the chart shelf") {
        const Example shelf("chart_shelf");
        CHECK(shelf.parts() == shelf.parts_of_piece());
        // 24 x 8 x 3/4; the blank is 8 1/4 wide, the jointer 8.
        CHECK(shelf.blank("side[left]").size == in_inches(25, ratio(33, 4), ratio(13, 16)));
        CHECK(shelf.panel("side[left]").suggested);
        CHECK(shelf.panel("side[left]").size == in_inches(25, ratio(17, 2), ratio(13, 16)));
        // 32 - 2 x 3/4 = 30 1/2, let in 1/4 at each side: 31; 1/4 behind the front: 7 3/4 wide.
        for (const char* name : {"shelf[1]", "shelf[3]"}) {
            CHECK(shelf.blank(name).size == in_inches(32, 8, ratio(13, 16)));
        }
        // Dowelled, so no longer than it shows, and 1/2 over, as it is marked from the work; the arch is sawn
        // out of its 3 in.
        CHECK(shelf.blank("rail").size == in_inches(32, ratio(13, 4), ratio(13, 16)));
        CHECK(shelf.blank("rail").thickness_class == "4/4");
        CHECK(std::ranges::all_of(shelf.sizes().panels, &PanelNeed::suggested));
    }

    TEST_CASE("rough sizes of the instrument tray") {
        const Example tray("instrument_tray");
        CHECK(tray.parts() == tray.parts_of_piece());
        // 280 x 80 x 12. Alone 280 + 25.4 is short of 355.6; two and a cut: 560 + 3.175 + 25.4.
        const Blank& ends = tray.blank("handle_end[left]");
        CHECK(ends.kinds.size() == 2);
        CHECK(ends.count == 1);
        CHECK(ends.size == Vector{{millimetres(5'885'750), millimetres(863'500), millimetres(135'875)}});
        CHECK(ends.thickness_class == "4/4");
        // 420 - 24 = 396, and half of 12 in each rabbet: 408; + 25.4.
        CHECK(tray.blank("side[front]").size ==
              Vector{{millimetres(4'334'000), millimetres(863'500), millimetres(135'875)}});
        // 280 - 24 = 256, a third of 12 in each housing: 264, which is short; 80 - 8 - 6 = 66 wide.
        CHECK(tray.blank("divider").size == Vector{{inches(14), millimetres(723'500), millimetres(95'875)}});
        // 396 x 256, and 12 / 3 - 1.5 = 2.5 in each groove: 401 x 261; + 25.4, + 12.7.
        const PanelNeed& bottom = tray.panel("bottom");
        CHECK(bottom.size == Vector{{millimetres(4'264'000), millimetres(2'737'000), millimetres(75'875)}});
        CHECK(bottom.reasons[2] ==
              "thinner than the ~6.5 mm that the planer takes: plane it on a carrier board");
        CHECK(stave_counts(bottom).fewest == 2);
        CHECK(stave_counts(bottom).most == 5);
    }
}
