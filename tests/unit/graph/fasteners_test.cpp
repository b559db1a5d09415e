#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// Posts and a rail whose ends meet in rectangles 18 x 60; `line` stands in the joint.
CompiledDesign with_line(const std::string& line) {
    return compile_text("joint pins(a: end, b: face) {\n\"Two pins.\"\n" + line +
                        "\n}\npiece \"Sample\" { unit mm; wide = 1000mm; deep = 1000mm; tall = 1000mm\n" +
                        stick("post, handed wide", "tall", {355, 0, 0}, {45, 45, 300}) +
                        stick("rail", "wide", {400, 10, 120}, {200, 18, 60}) +
                        "join rail.left, rail.right to post with pins\n}\n");
}

}  // namespace

TEST_SUITE("unit/graph") {
    TEST_CASE("fasteners stand in the joint's own frame, each with its form") {
        const CompiledDesign design =
            with_line("hold dowel cylinder(8mm, 50mm) at (0, 0, -25mm) repeat 2 every 30mm along widthwise");
        for (const Joint& joint : design.piece().joints) {
            REQUIRE(joint.fasteners.size() == 2);
            CHECK(joint.fasteners[0].form == FastenerForm::dowel);
            CHECK(joint.fasteners[0].body.size_u == 8);
            CHECK(joint.fasteners[0].body.length == 50);
            CHECK(joint.fasteners[0].body.frame.origin == Vector{{0, -15, -25}});
            CHECK(joint.fasteners[1].body.frame.origin == Vector{{0, 15, -25}});
        }
    }

    TEST_CASE("what is no fastener, or lies across, is refused") {
        CHECK(with_line("hold nail cylinder(2mm, 50mm)").report().find("E0207 3:6 `nail` is no fastener") ==
              0);
        CHECK(with_line("hold screw cylinder(4mm, 50mm) along widthwise").report().find("E0406") == 0);
        CHECK(with_line("hold screw box(4mm, 4mm, 50mm)").report().find("E0406") == 0);
    }

    TEST_CASE("uses keep their words, people and parts") {
        const CompiledDesign design =
            compile_body(stick("seat, handed wide", "wide", {0, 0, 400}, {300, 300, 20}) +
                         "use seat for 2 on seat[left]\nuse shelf books\n");
        REQUIRE(design.piece().uses.size() == 2);
        CHECK(design.piece().uses[0].what == "seat");
        CHECK(design.piece().uses[0].people == 2);
        REQUIRE(design.piece().uses[0].on.size() == 1);
        CHECK(design.piece()[design.piece().uses[0].on.front()].name == "seat[left]");
        CHECK(design.piece().uses[1].detail == "books");
        CHECK(design.piece().uses[1].on.empty());
    }
}
