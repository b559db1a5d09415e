// Close neighbours, and what closes the gap between them.
#include "compiler/check/movement/narrow_gaps.hpp"

#include <doctest/doctest.h>

#include "compiler/assembly/placed_meshes.hpp"
#include "tests/support/design.hpp"
#include "tests/unit/check/rates.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

std::vector<NarrowGap> gaps_of(const std::string& body) {
    const CompiledDesign design = compile_body("wood oak = red_oak flat\n" + body);
    Diagnostics diagnostics;
    SolidStore solids(design.piece(), diagnostics);
    return narrow_gaps(design.piece(), placed_meshes(design.piece(), solids));
}

}  // namespace

TEST_SUITE("unit/check") {
    TEST_CASE("boards side by side close their gap by half of each one's growth") {
        const auto gaps = gaps_of(stick("a of oak", "wide", {0, 0, 0}, {600, 100, 20}) +
                                  stick("b of oak", "wide", {0, 103, 0}, {600, 60, 20}));
        REQUIRE(gaps.size() == 1);
        CHECK(gaps[0].axis == Axis::deep);
        CHECK(gaps[0].room == doctest::Approx(3));
        CHECK(gaps[0].growth == doctest::Approx((100 + 60) / 2.0 * flat_oak));
    }

    TEST_CASE("wide gaps, parts that touch, that are askew, and ends are no fits") {
        const std::string board = stick("a of oak", "wide", {0, 0, 0}, {600, 100, 20});
        CHECK(gaps_of(board + stick("b of oak", "wide", {0, 107, 0}, {600, 60, 20})).empty());
        CHECK(gaps_of(board + stick("b of oak", "wide", {0, 100, 0}, {600, 60, 20})).empty());
        CHECK(gaps_of(board + stick("b of oak", "wide", {0, 103, 23}, {600, 60, 20})).empty());
        CHECK(gaps_of(board + stick("b of oak", "wide", {603, 0, 0}, {300, 100, 20})).empty());
    }

    TEST_CASE(
        "what is placed as a piece of its own stands free: both gaps are its room, all its growth closes "
        "them") {
        const auto gaps =
            gaps_of(stick("below of oak", "wide", {0, 0, 0}, {400, 300, 20}) +
                    stick("above of oak", "wide", {0, 0, 125}, {400, 300, 20}) +
                    "assembly box() { wide = 400mm; deep = 300mm; tall = 100mm\n" +
                    "part flank of oak { grain deep; left = piece.left; wide = 20mm; front = piece.front; "
                    "back = piece.back; bottom = piece.bottom; top = piece.top }\n}\n"
                    "place box as till() { left = piece.left; front = piece.front; bottom = piece.bottom + "
                    "22mm }\n");
        REQUIRE(gaps.size() == 1);
        CHECK(gaps[0].axis == Axis::tall);
        CHECK(gaps[0].room == doctest::Approx(2 + 3));
        CHECK(gaps[0].growth == doctest::Approx(100 * flat_oak));
    }
}
