// Fibres that run through a part from end to end.
#include "compiler/check/wood/grain.hpp"

#include <doctest/doctest.h>

#include "compiler/assembly/placed_meshes.hpp"
#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// Up and down, in a rail of 400 x 20 x 80 mm with these shapes on it.
StraightGrain of_rail(const std::string& shapes) {
    const CompiledDesign design = compile_body(stick("rail", "wide", {0, 0, 0}, {400, 20, 80}, shapes));
    Diagnostics diagnostics;
    SolidStore solids(design.piece(), diagnostics);
    return straight_grain(placed_meshes(design.piece(), solids).front(), Axis::wide, Axis::tall, 0, 400);
}

}  // namespace

TEST_SUITE("unit/check") {
    TEST_CASE("in a straight part all fibres run through, and pockets count as wood") {
        for (const char* shapes : {"", "bore(diameter = 10mm, from_end = 100mm) on front face"}) {
            const StraightGrain grain = of_rail(shapes);
            CHECK(grain.narrowest == doctest::Approx(80));
            CHECK(grain.through == doctest::Approx(80));
        }
    }

    TEST_CASE("what a hollow leaves at its deepest runs through") {
        const StraightGrain grain = of_rail("arch(rise = 30mm, chord = 300mm) on bottom face");
        CHECK(grain.narrowest == doctest::Approx(50).epsilon(0.01));
        CHECK(grain.share() == doctest::Approx(1).epsilon(0.01));
    }

    TEST_CASE("where one side is hollow and the other falls away elsewhere, little or nothing runs through") {
        // At the middle the bottom is at 35, at the right end the top is at 45.
        const StraightGrain grain = of_rail(
            "arch(rise = 35mm, chord = 400mm) on bottom face; taper(to = 45mm, from_top = 0mm, thin_end = "
            "top) on top "
            "face");
        CHECK(grain.through < 14);
        CHECK(grain.through > 8);
        CHECK(grain.share() < 0.5);
    }

    TEST_CASE("where there is nothing to measure nothing runs out") {
        CHECK(straight_grain({}, Axis::wide, Axis::tall, 0, 400).share() == 1);
    }
}
