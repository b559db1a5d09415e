// Joints of cases and boxes: ends let into faces, panels in grooves.
#include <doctest/doctest.h>

#include "tests/support/sample.hpp"

using namespace rodwright::testing;

// Volumes in mm^3 from lengths times widths times depths, worked out on paper.
TEST_SUITE_BEGIN("reference/joints");

namespace {

constexpr double side = 300.0 * 120 * 18;
constexpr double shelf = 200.0 * 100 * 15;

// A shelf 200 long, 100 wide and 15 thick, its right end on a side 18 thick that goes on 20 in front of it.
std::string shelf_and_side(const std::string& shelf_bottom, const std::string& joint) {
    return "part side of oak { grain tall; left = 400mm; wide = 18mm; front = 0mm; deep = 120mm; bottom = "
           "0mm; "
           "tall = 300mm }\n"
           "part shelf of oak { grain wide; left = 200mm; right = side.left; front = 20mm; deep = 100mm; "
           "bottom = " +
           shelf_bottom + "; tall = 15mm }\njoin shelf.right to side with " + joint + "\n";
}

}  // namespace

TEST_CASE("a housing a third deep unless told otherwise") {
    const Sample sample(shelf_and_side("100mm", "housing()"));
    CHECK(sample.volume("shelf") == close_to(shelf + 15.0 * 100 * 6));
    CHECK(sample.volume("side") == close_to(side - 15.0 * 100 * 6));
    CHECK(sample.overall("shelf", 0) == 206);
}

TEST_CASE("a stopped housing is short at the front, or at the back where that is asked for") {
    const double trench = 15.0 * 88 * 5;
    const Sample front(shelf_and_side("100mm", "housing(depth = 5mm, stop = 12mm)"));
    CHECK(front.volume("shelf") == close_to(shelf + trench));
    CHECK(front.volume("side") == close_to(side - trench));
    CHECK(front.centre("side")[1] == close_to((side * 60 - trench * 76) / (side - trench)));
    const Sample back(shelf_and_side("100mm", "housing(depth = 5mm, stop = 12mm, stop_at = back)"));
    CHECK(back.centre("side")[1] == close_to((side * 60 - trench * 64) / (side - trench)));
}

TEST_CASE("a rabbet at the end of the side") {
    const Sample sample(shelf_and_side("0mm", "rabbet()"));
    CHECK(sample.volume("shelf") == close_to(shelf + 15.0 * 100 * 9));
    CHECK(sample.volume("side") == close_to(side - 15.0 * 100 * 9));
}

TEST_CASE("a half lap at a corner") {
    const Sample sample(
        "part post of oak { grain tall; left = 400mm; wide = 50mm; front = 0mm; deep = 20mm; bottom = 0mm; "
        "tall = "
        "300mm }\n"
        "part rail of oak { grain wide; left = 200mm; right = post.left; front = 0mm; deep = 20mm; bottom = "
        "240mm; "
        "tall = 60mm }\n"
        "join rail.right to post with half_lap()\n");
    CHECK(sample.volume("rail") == close_to(200.0 * 60 * 20 + 10.0 * 60 * 50));
    CHECK(sample.volume("post") == close_to(300.0 * 50 * 20 - 10.0 * 60 * 50));
    CHECK(sample.overall("rail", 0) == 250);
}

TEST_CASE("a panel reaches into its groove up to the room it is left") {
    const Sample sample(
        "part frame of oak { grain deep; left = 400mm; wide = 18mm; front = 0mm; deep = 300mm; bottom = 0mm; "
        "tall = "
        "60mm }\n"
        "part panel of oak { grain wide; left = 200mm; right = frame.left; front = 50mm; deep = 200mm; "
        "bottom = "
        "20mm; tall = 6mm }\n"
        "join panel.right to frame with panel_in_groove(play = 2mm)\n");
    // Groove 6 deep, so the panel reaches 4 in; both go on past the corner by as much.
    CHECK(sample.volume("panel") == close_to(200.0 * 200 * 6 + 6.0 * (200 + 2 * 4) * 4));
    CHECK(sample.volume("frame") == close_to(300.0 * 60 * 18 - 6.0 * (200 + 2 * 6) * 6));
    CHECK(sample.overall("panel", 0) == 204);
}

TEST_SUITE_END();
