#include "compiler/stock/rack/read_rack.hpp"

#include <doctest/doctest.h>

#include "compiler/quantity/quantity.hpp"
#include "tests/unit/rack/rack_text.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

const std::string whole_rack = R"(# The shop at the weather station.
money: crowns
boards:
  - {name: A1, wood: white_ash, cut: flat, thickness: 4/4, width: 7-1/2 in, length: 8 ft, price: 42}
  - name: A2
    wood: white_ash
    thickness: 13/16 in
    surfaced: true
    width: 6 in to 5-1/4 in
    length: 61 in
    count: 2
    moisture: 8%
    checks: 2 in, 1 in
    sapwood: 3/4 in
    bow: 1/8 in
    cup: 1/16 in
    twist: 1/4 in
    defects:
      - {from_end: 20 in, from_edge: 2 in, length: 1-1/2 in, width: 1 in, note: knot}
    note: the wide one behind the door
offcuts:
  - {name: A3-1, from: A3, wood: white_ash, thickness: 5/4, width: 90mm, length: 400mm, checks: [0, 1 in]}
sheets:
  - {name: P1, wood: birch_plywood, thickness: 18mm, length: 2440mm, width: 1220mm, grain: width, trim: 10mm}
  - {name: P1-1, from: P1, wood: mdf, thickness: 18mm, length: 600mm, width: 0.4 m, grain: none}
dealer:
  lumber:
    - {wood: white_ash, cut: flat, thickness: [8/4, 4/4, 5/4, 4/4], width: 5 in to 9 in, length: 6 ft to 10 ft,
       price: 6.40}
  sheets: [{wood: birch_plywood, thickness: 12mm, length: 2440mm, width: 1220mm, price: 60}]
  dowels: [{wood: cherry, diameter: 3/8 in, length: 36 in, price: 2-1/2}]
)";

}  // namespace

TEST_SUITE("unit/rack") {
    TEST_CASE("a rack with all that can be said of it") {
        const Rack rack = rack_of(whole_rack);
        CHECK(rack.money == "crowns");
        REQUIRE(rack.boards.size() == 3);
        const RackBoard& first = rack.boards[0];
        CHECK(first.name == "A1");
        CHECK(first.species == "white_ash");
        CHECK(first.cut == "flat");
        CHECK_FALSE(first.surfaced);
        CHECK(first.thickness == inches(1));
        CHECK(first.width == inches(15, 2));
        CHECK(first.far_width == inches(15, 2));
        CHECK(first.length == inches(96));
        CHECK(first.count == 1);
        CHECK(first.price == Rational(42));
        CHECK_FALSE(first.moisture);
        CHECK_FALSE(first.offcut);
        CHECK(first.where.begin == whole_rack.find("{name: A1"));

        const RackBoard& second = rack.boards[1];
        CHECK(second.cut == "");
        CHECK(second.surfaced);
        CHECK(second.thickness == inches(13, 16));
        CHECK(second.width == inches(6));
        CHECK(second.far_width == inches(21, 4));
        CHECK(second.count == 2);
        CHECK(second.moisture == Rational(8));
        CHECK(second.checks == inches(2));
        CHECK(second.far_checks == inches(1));
        CHECK(second.sapwood == inches(3, 4));
        CHECK(second.warp.bow == inches(1, 8));
        CHECK(second.warp.cup == inches(1, 16));
        CHECK(second.warp.twist == inches(1, 4));
        REQUIRE(second.defects.size() == 1);
        CHECK(second.defects[0].from_end == inches(20));
        CHECK(second.defects[0].from_edge == inches(2));
        CHECK(second.defects[0].length == inches(3, 2));
        CHECK(second.defects[0].width == inches(1));
        CHECK(second.defects[0].note == "knot");
        CHECK_FALSE(second.price);
        CHECK(second.note == "the wide one behind the door");

        const RackBoard& offcut = rack.boards[2];
        CHECK(offcut.offcut);
        CHECK(offcut.from == "A3");
        CHECK(offcut.thickness == inches(5, 4));
        CHECK(offcut.width == 90);
        CHECK(offcut.checks == 0);
        CHECK(offcut.far_checks == inches(1));
    }

    TEST_CASE("sheets and what the dealer sells") {
        const Rack rack = rack_of(whole_rack);
        REQUIRE(rack.sheets.size() == 2);
        CHECK(rack.sheets[0].thickness == 18);
        CHECK(rack.sheets[0].length == 2440);
        CHECK(rack.sheets[0].width == 1220);
        CHECK(rack.sheets[0].grain == FaceGrain::along_width);
        CHECK(rack.sheets[0].trim == 10);
        CHECK_FALSE(rack.sheets[0].offcut);
        CHECK(rack.sheets[1].offcut);
        CHECK(rack.sheets[1].from == "P1");
        CHECK(rack.sheets[1].width == 400);
        CHECK(rack.sheets[1].grain == FaceGrain::none);

        REQUIRE(rack.lumber.size() == 1);
        CHECK(rack.lumber[0].cut == "flat");
        CHECK(rack.lumber[0].thicknesses == std::vector<Rational>{inches(1), inches(5, 4), inches(2)});
        CHECK(rack.lumber[0].narrowest == inches(5));
        CHECK(rack.lumber[0].widest == inches(9));
        CHECK(rack.lumber[0].shortest == inches(72));
        CHECK(rack.lumber[0].longest == inches(120));
        CHECK(rack.lumber[0].price == ratio(64, 10));
        REQUIRE(rack.sheet_offers.size() == 1);
        CHECK(rack.sheet_offers[0].grain == FaceGrain::along_length);
        CHECK(rack.sheet_offers[0].price == 60);
        REQUIRE(rack.dowels.size() == 1);
        CHECK(rack.dowels[0].diameter == inches(3, 8));
        CHECK_FALSE(rack.dowels[0].common.empty());
        CHECK(rack.dowels[0].length == inches(36));
        CHECK(rack.dowels[0].price == ratio(5, 2));
    }

    TEST_CASE("one length for both ends, one thickness, one width of a dealer's boards") {
        const Rack rack = rack_of(
            "money: crowns\n"
            "boards: [{name: A, wood: cherry, thickness: 1 in, width: 6\", length: 4', checks: 1 in}]\n"
            "dealer: {lumber: [{wood: cherry, thickness: 4/4, width: 6 in, length: 8 ft, price: 0}]}\n");
        CHECK(rack.boards.at(0).checks == inches(1));
        CHECK(rack.boards.at(0).far_checks == inches(1));
        CHECK(rack.lumber.at(0).thicknesses == std::vector<Rational>{inches(1)});
        CHECK(rack.lumber.at(0).narrowest == rack.lumber.at(0).widest);
        CHECK(rack.lumber.at(0).price == 0);
    }

    TEST_CASE("a rack may be empty, and so may its lists") {
        for (const char* text : {"boards:\n", "money: crowns\n", "boards: []\noffcuts:\nsheets: ~\ndealer:\n",
                                 "{}", "dealer: {lumber: , sheets: [], dowels: ~}\n"}) {
            const Rack rack = rack_of(text);
            CHECK(rack.boards.empty());
            CHECK(rack.sheets.empty());
            CHECK(rack.lumber.empty());
        }
    }

    TEST_CASE("a board may be wider at either end, and sapwood all through") {
        const Rack rack = rack_of(
            "boards:\n"
            "- {name: A, wood: cherry, thickness: 1 in, width: 4 in to 6 in, length: 4 ft, sapwood: 4 in,\n"
            "   defects: [{from_end: 40 in, from_edge: 5 in, length: 8 in, width: 1 in}]}\n");
        CHECK(rack.boards.at(0).far_width == inches(6));
        CHECK(rack.boards.at(0).sapwood == inches(4));
    }
}
