#include <doctest/doctest.h>

#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;
using doctest::Approx;

TEST_SUITE("unit/solid") {
    TEST_CASE("what of a bar lies within a box is the bar between its sides") {
        const SolidRef bar = build(kind_of(100, 40, 20));
        const SolidRef part = kernel().within(bar, {{30, -5, -5}, {75, 45, 25}});
        REQUIRE(part != nullptr);
        CHECK(kernel().volume(*part) == Approx(45 * 40 * 20));
        CHECK(kernel().bounds(*part).low[0] == Approx(30));
    }

    TEST_CASE("a box beside the solid leaves nothing, one around it all") {
        const SolidRef bar = build(kind_of(100, 40, 20));
        CHECK(kernel().within(bar, {{200, 0, 0}, {300, 40, 20}}) == nullptr);
        const SolidRef all = kernel().within(bar, {{-1, -1, -1}, {101, 41, 21}});
        CHECK(all == bar);
    }
}
