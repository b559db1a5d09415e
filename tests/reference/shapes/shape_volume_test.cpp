#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "tests/support/sample.hpp"

using namespace rodwright::testing;

// Volumes in mm^3 by the formulas of box, wedge, cylinder and circular segment, worked out on paper.
TEST_SUITE_BEGIN("reference/shapes");

namespace {

// A bar 200 long, 40 deep and 30 tall.
double volume(const std::string& shape) {
    return Sample(
               "part bar of oak { grain wide; left = 0mm; wide = 200mm; front = 0mm; deep = 40mm; bottom = "
               "0mm; "
               "tall = 30mm; " +
               shape + " }\n")
        .volume("bar");
}

constexpr double bar = 200.0 * 40 * 30;

}  // namespace

TEST_CASE("rounding an edge leaves a quarter circle of a square") {
    CHECK(volume("round(6mm) on top front edge") == close_to(bar - (1 - std::numbers::pi / 4) * 36 * 200));
}

TEST_CASE("a chamfer takes half a square") {
    CHECK(volume("chamfer(4mm) on top front edge, bottom back edge") == close_to(bar - 2 * 16 / 2.0 * 200));
}

TEST_CASE("a taper takes a wedge") {
    CHECK(volume("taper(to = 20mm, from_top = 50mm) on top face") == close_to(bar - 150 * 10 / 2.0 * 40));
    CHECK(volume("taper(to = 30mm, from_top = 20mm, thin_end = top) on front face") ==
          close_to(bar - 180 * 10 / 2.0 * 30));
}

TEST_CASE("the thin end of a taper is where it is asked for") {
    const std::string part =
        "part bar of oak { grain wide; left = 0mm; wide = 200mm; front = 0mm; deep = 40mm; bottom = 0mm; "
        "tall = "
        "30mm; taper(to = 20mm";
    // A wedge's centre is a third of its length from its thick end; the wedge is thick where the bar is thin.
    const double wedge = 200 * 10 / 2.0 * 40;
    const Sample left(part + ") on top face }\n");
    CHECK(left.centre("bar")[0] == close_to((bar * 100 - wedge * 200 / 3) / (bar - wedge)));
    const Sample right(part + ", thin_end = top) on top face }\n");
    CHECK(right.centre("bar")[0] == close_to((bar * 100 - wedge * 400 / 3) / (bar - wedge)));
}

TEST_CASE("grooves and notches take boxes") {
    CHECK(volume("groove(wide = 6mm, deep = 8mm) on front face") == close_to(bar - 6.0 * 8 * 200));
    CHECK(volume("groove(wide = 6mm, stop_start = 30mm, stop_end = 20mm) on top face") ==
          close_to(bar - 6.0 * 10 * 150));
    CHECK(volume("notch(long = 25mm, deep = 10mm, from_end = 40mm) on top face") ==
          close_to(bar - 25.0 * 10 * 40));
}

TEST_CASE("a rabbet's width is on the face that is named first: front before top") {
    const Sample sample(
        "part bar of oak { grain wide; left = 0mm; wide = 200mm; front = 0mm; deep = 40mm; bottom = 0mm; "
        "tall = "
        "30mm; rabbet(wide = 10mm, deep = 12mm) on top front edge }\n");
    const double step = 10.0 * 12 * 200;
    CHECK(sample.volume("bar") == close_to(bar - step));
    CHECK(sample.centre("bar")[1] == close_to((bar * 20 - step * 6) / (bar - step)));
    CHECK(sample.centre("bar")[2] == close_to((bar * 15 - step * 25) / (bar - step)));
}

TEST_CASE("a notch begins where it is asked to") {
    const Sample sample(
        "part bar of oak { grain wide; left = 0mm; wide = 200mm; front = 0mm; deep = 40mm; bottom = 0mm; "
        "tall = "
        "30mm; notch(long = 25mm, deep = 10mm, from_end = 40mm) on top face }\n");
    const double notch = 25.0 * 10 * 40;
    CHECK(sample.centre("bar")[0] == close_to((bar * 100 - notch * 52.5) / (bar - notch)));
}

TEST_CASE("bored holes take cylinders") {
    CHECK(volume("bore(diameter = 8mm, count = 3, spacing = 30mm) on top face") ==
          close_to(bar - 3 * std::numbers::pi / 4 * 64 * 30));
    CHECK(volume("bore(diameter = 8mm, deep = 12mm, from_edge = 10mm, from_end = 20mm) on front face") ==
          close_to(bar - std::numbers::pi / 4 * 64 * 12));
}

// Segment of a circle with chord c and rise h: R = c^2 / (8 h) + h / 2,
// area = R^2 acos((R - h) / R) - (R - h) c / 2.
TEST_CASE("an arch takes a segment of a circle") {
    const double radius = 160.0 * 160 / (8 * 10) + 5;
    const double segment = radius * radius * std::acos((radius - 10) / radius) - (radius - 10) * 80;
    CHECK(volume("arch(rise = 10mm, chord = 160mm) on bottom face") == close_to(bar - segment * 40));
}

// Chord 36 in, rise 1-1/2 in: radius 108-3/4 in (arithmetic).
TEST_CASE("radius of an arch from its chord and rise") {
    const Sample sample(
        "part rail of oak { grain wide; left = 0\"; wide = 40\"; front = 0\"; deep = 3/4\"; bottom = 0\"; "
        "tall = 5\"; "
        "arch(rise = 1-1/2\", chord = 36\") on bottom face }\n");
    CHECK(sample.shape_number("rail", "radius") == close_to(25.4 * 108.75));
}

TEST_SUITE_END();
