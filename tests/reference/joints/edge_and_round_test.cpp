// Joints along edges, and those with round holes.
#include <doctest/doctest.h>

#include <numbers>

#include "tests/support/sample.hpp"

using namespace rodwright::testing;

// Volumes in mm^3 by the formulas of the box and the cylinder, worked out on paper.
TEST_SUITE_BEGIN("reference/joints");

namespace {

double cylinder(double diameter, double depth) {
    return std::numbers::pi / 4 * diameter * diameter * depth;
}

// Two boards 300 long, 100 and 80 wide, 18 thick, edge to edge.
std::string two_boards(const std::string& joint) {
    return "part near of oak { grain wide; left = 0mm; wide = 300mm; front = 0mm; deep = 100mm; bottom = "
           "0mm; "
           "tall = 18mm }\n"
           "part far of oak { grain wide; left = 0mm; wide = 300mm; front = near.back; deep = 80mm; bottom = "
           "0mm; "
           "tall = 18mm }\njoin near.back to far.front with " +
           joint + "\n";
}

constexpr double near_board = 300.0 * 100 * 18;
constexpr double far_board = 300.0 * 80 * 18;

}  // namespace

TEST_CASE("a tongue a third of the thickness, and a groove deeper by an eighth of that") {
    const Sample sample(two_boards("tongue_and_groove()"));
    CHECK(sample.volume("near") == close_to(near_board + 6.0 * 300 * 6));
    CHECK(sample.volume("far") == close_to(far_board - 6.0 * 300 * 6.75));
    CHECK(sample.overall("near", 1) == 106);
}

TEST_CASE("edges that are only glued keep their wood") {
    const Sample sample(two_boards("edge_glue()"));
    CHECK(sample.volume("near") == close_to(near_board));
    CHECK(sample.volume("far") == close_to(far_board));
}

TEST_CASE("dowels take a hole in each part") {
    const Sample sample(
        two_boards("dowels(diameter = 9mm, count = 3, deep = 25mm, deep_second = 20mm, spare = 1mm)"));
    CHECK(sample.volume("near") == close_to(near_board - 3 * cylinder(9, 26)));
    CHECK(sample.volume("far") == close_to(far_board - 3 * cylinder(9, 21)));
}

// 3/8 in dowels in 3/4 in stock, 1-1/4 in into each part, holes 1/16 in deeper: 1-5/16 in (shop rule of trade
// writing; here three diameters, 1-1/8 in, hence 1-3/16 in).
TEST_CASE("dowels in three-quarter inch boards") {
    const Sample sample(
        "part near of oak { grain wide; left = 0\"; wide = 24\"; front = 0\"; deep = 4\"; bottom = 0\"; tall "
        "= 3/4\" }\n"
        "part far of oak { grain wide; left = 0\"; wide = 24\"; front = near.back; deep = 4\"; bottom = 0\"; "
        "tall = "
        "3/4\" }\njoin near.back to far.front with dowels()\n",
        "in");
    CHECK(sample.number("diameter") == close_to(25.4 * 3 / 8));
    CHECK(sample.number("hole") == close_to(25.4 * 19 / 16));
    // 3/4 in from the ends, 22-1/2 in between, no more than 7-1/2 in apart: three gaps.
    CHECK(sample.number("count") == 4);
    CHECK(sample.number("spacing") == close_to(25.4 * 7.5));
}

namespace {

// A top 400 by 300 and 20 thick on a rail 18 thick and 100 tall, along its front edge and 20 behind it.
std::string top_on_rail(const std::string& joint) {
    return "part rail of oak { grain wide; left = 50mm; wide = 300mm; front = 20mm; deep = 18mm; bottom = "
           "0mm; "
           "tall = 100mm }\n"
           "part top of oak { grain wide; left = 0mm; wide = 400mm; front = 0mm; deep = 300mm; bottom = "
           "rail.top; "
           "tall = 20mm }\nfasten top to rail with " +
           joint + "\n";
}

constexpr double top = 400.0 * 300 * 20;
constexpr double long_rail = 300.0 * 100 * 18;

}  // namespace

TEST_CASE("screws: a clearance hole and a sinking in one part, a pilot in the other") {
    const Sample sample(top_on_rail("screws(number = 8, every = 100mm, long = 40mm)"));
    // 25 from the ends, 250 between: three gaps of 83-1/3.
    const double shank = 25.4 * (0.060 + 0.013 * 8);
    const double sink = shank / 2 + 25.4 / 64;
    const double clearance = sample.number("clearance");
    CHECK(clearance >= shank);
    CHECK(clearance <= shank + 0.5);
    CHECK(sample.number("count") == 4);
    CHECK(sample.volume("top") ==
          close_to(top - 4 * cylinder(clearance, 20 - sink) - 4 * cylinder(2 * shank, sink)));
    CHECK(sample.volume("rail") == close_to(long_rail - 4 * cylinder(sample.number("pilot"), 20)));
}

// Shank 0.060 + 0.013 N in; clearance the next drill at or above the shank (wood screw table of the trade).
TEST_CASE("clearance drills by the number of the screw") {
    struct Screw {
        int number;
        double sixty_fourths;
    };
    for (const Screw& screw : {Screw{4, 8}, Screw{6, 9}, Screw{8, 11}, Screw{10, 13}, Screw{12, 14}}) {
        CAPTURE(screw.number);
        const Sample sample(top_on_rail("screws(number = " + std::to_string(screw.number) + ", long = 40mm)"),
                            "in");
        CHECK(sample.number("clearance") == close_to(25.4 * screw.sixty_fourths / 64));
    }
}

TEST_CASE("buttons: slots on the inner side of the rail, pilots in the top") {
    const Sample sample(top_on_rail(
        "buttons(every = 200mm, wide = 30mm, tongue = 8mm, slot = 6mm, down = 10mm, room = 8mm)"));
    // 50 from the ends, 200 between: two buttons. Slot 30 + 2 * 8 long, 8 + 8 / 2 deep.
    CHECK(sample.number("count") == 2);
    const double slots = 2 * 46.0 * 12 * 6;
    CHECK(sample.volume("rail") == close_to(long_rail - slots));
    // The middle of the top is behind the rail: the slots reach from 26 to 38.
    CHECK(sample.centre("rail")[1] == close_to((long_rail * 29 - slots * 32) / (long_rail - slots)));
    CHECK(sample.volume("top") == close_to(top - 2 * cylinder(sample.number("pilot"), 20 * 2.0 / 3)));
}

TEST_SUITE_END();
