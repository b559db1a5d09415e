// Weight and its centre, against sums by hand.
#include "compiler/check/stability/weight.hpp"

#include <doctest/doctest.h>

#include <numbers>

#include "compiler/assembly/placed_meshes.hpp"
#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

Weight weight_of_text(const std::string& body) {
    const CompiledDesign design = compile_body(body);
    Diagnostics diagnostics;
    SolidStore solids(design.piece(), diagnostics);
    return weight_of(design.piece(), placed_meshes(design.piece(), solids));
}

}  // namespace

TEST_SUITE("unit/check") {
    TEST_CASE("two blocks weigh their volumes, and balance by them") {
        // Red oak is 706 kg/m3: 0.4 and 0.1 dm3.
        const Weight weight =
            weight_of_text("wood oak = red_oak\n" + stick("a of oak", "wide", {0, 0, 0}, {200, 50, 40}) +
                           stick("b of oak", "tall", {0, 0, 40}, {20, 50, 100}));
        CHECK(weight.kilograms == doctest::Approx(0.5e-3 * 706));
        CHECK(weight.centre[0] == doctest::Approx((0.4 * 100 + 0.1 * 10) / 0.5));
        CHECK(weight.centre[1] == doctest::Approx(25));
        CHECK(weight.centre[2] == doctest::Approx((0.4 * 20 + 0.1 * 90) / 0.5));
        CHECK(weight.guessed.empty());
    }

    TEST_CASE("holes weigh nothing, and a wood that is not named is guessed") {
        const Weight weight = weight_of_text(stick("a", "wide", {100, 0, 0}, {200, 50, 40},
                                                   "bore(diameter = 30mm, from_end = 100mm) on top face"));
        const double hole = std::numbers::pi * 15 * 15 * 40;
        CHECK(weight.kilograms == doctest::Approx((200 * 50 * 40 - hole) * 600e-9).epsilon(0.002));
        CHECK(weight.guessed == std::vector<std::string>{"a"});
    }
}
