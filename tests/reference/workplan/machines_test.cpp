// What the library's shop says of speeds and sizes, against what guides and school sheets say.
#include <doctest/doctest.h>

#include <numbers>

#include "compiler/workplan/work_data.hpp"

using namespace rodwright;

namespace {

const Shop& shop() {
    return embedded_work_data().shop;
}

// Straight bits are as wide as their size.
double most_turns(const Rational& diameter) {
    return shop().most_turns("straight_bit", diameter).value().get_d();
}

// Feet a minute.
double rim_speed(double inches_across, double turns) {
    return std::numbers::pi * inches_across / 12 * turns;
}

}  // namespace

TEST_SUITE("reference/workplan") {
    // Source: maxima of router bits by diameter in guides of the trade. A: a woodworking magazine's rules for
    // small parts (to 1 in 24,000, to 2 in 18,000); B: a reference site restating a television workshop's
    // (24,000, 18,000, 16,000 to 2-1/2 in, 12,000 above); C: a table with ranges that three pages repeat
    // (22,000 to 24,000, 18,000 to 22,000, 12,000 to 16,000, 8,000 to 12,000).
    TEST_CASE("no cutter may turn faster than guides allow") {
        CHECK(most_turns(inches(1)) <= 24000);
        for (const double published : {18000.0, 18000.0, 22000.0}) CHECK(most_turns(inches(2)) <= published);
        for (const double published : {16000.0, 16000.0}) CHECK(most_turns(inches(5, 2)) <= published);
        for (const double published : {12000.0, 12000.0}) CHECK(most_turns(inches(7, 2)) <= published);
        CHECK(most_turns(inches(4)) == 0);
    }

    // Source: a router speed calculator's page: 3 in at 10,000 turns 7,854 ft/min, at 24,000 18,850 ft/min;
    // more than 12,000 ft/min is too much.
    TEST_CASE("rims of the widest cutters stay below 12,000 feet a minute") {
        CHECK(rim_speed(3, 10000) == doctest::Approx(7854).epsilon(0.0001));
        CHECK(rim_speed(3, 24000) == doctest::Approx(18850).epsilon(0.0001));
        for (const Rational& across : {inches(1), inches(2), inches(5, 2), inches(7, 2)})
            CHECK(rim_speed(across.get_d() / 25.4, most_turns(across)) < 12000);
    }

    // Source: school shops' sheets (a high-school district's router table page: no stock under 12 in unless
    // it is held in a jig, hands 4 in away, another's 3 in; jointer 12 in in most, 14 in in one; planer 12 or
    // 14 in).
    TEST_CASE("the smallest parts are those of school sheets, or larger") {
        const Machine* router_table = shop().machine("router_table");
        REQUIRE(router_table != nullptr);
        REQUIRE(router_table->smallest);
        CHECK(router_table->smallest->length == inches(12));
        CHECK(router_table->smallest->width >= inches(3));
        CHECK(shop().machine("jointer")->shortest >= inches(12));
        CHECK(shop().machine("planer")->shortest >= inches(14));
    }

    // Source: a book of the trade on routers, as a magazine quotes it: bits over 1 in across in a table only.
    TEST_CASE("by hand no wider cutter than one inch") {
        CHECK(shop().machine("router")->largest == inches(1));
        CHECK(shop().machine("router_table")->largest > inches(1));
    }

    // Source: flute lengths of jobber's drills, ASME B94.11M (from memory): 1/16 in 7/8, 1/8 in 1-5/8, 1/4 in
    // 2-3/4, 3/8 in 3-5/8.
    TEST_CASE("drills reach as deep as their flutes") {
        CHECK(shop().reach_of("drill_bit", inches(1, 16)) == inches(7, 8));
        CHECK(shop().reach_of("drill_bit", inches(1, 8)) == inches(13, 8));
        CHECK(shop().reach_of("drill_bit", inches(1, 4)) == inches(11, 4));
        CHECK(shop().reach_of("drill_bit", inches(3, 8)) == inches(29, 8));
    }

    // Geometry: a quarter round of radius r takes 2 r and the bearing.
    TEST_CASE("a rounding cutter is twice its radius and its bearing across") {
        CHECK(shop().diameter_of("round_over_bit", inches(3, 4)) == inches(2));
        CHECK(shop().diameter_of("straight_bit", inches(3, 4)) == inches(3, 4));
    }
}
