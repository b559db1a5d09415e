#include "backends/drawing/regions.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace rodwright::drawing;
using doctest::Approx;

static Polyline square(double low, double high) {
    return {{low, low}, {high, low}, {high, high}, {low, high}, {low, low}};
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("lines that cross divide a square; what ends in nothing divides nothing") {
        const auto regions = regions_between({square(0, 10), {{4, -3}, {4, 12}}, {{6, 5}, {8, 5}}}, 0.001);
        REQUIRE(regions.size() == 2);
        CHECK(regions[0].area == Approx(60));
        CHECK(regions[1].area == Approx(40));
        CHECK(regions[1].inside.x < 4);
        CHECK(regions[1].inside.x > 0);
    }

    TEST_CASE("an end that stops just short of a line meets it") {
        const auto regions = regions_between({square(0, 10), {{4, 0.004}, {4, 9.996}}}, 0.01);
        CHECK(regions.size() == 2);
    }

    TEST_CASE("a square within a square is a hole, and a region of its own") {
        const auto regions = regions_between({square(0, 10), square(3, 5)}, 0.001);
        REQUIRE(regions.size() == 2);
        CHECK(regions[0].area == Approx(96));
        CHECK(regions[0].holes.size() == 1);
        CHECK(regions[1].area == Approx(4));
    }

    TEST_CASE("lines are clipped to a region and not to its hole") {
        const auto regions = regions_between({square(0, 10), square(3, 5)}, 0.001);
        REQUIRE(regions.size() == 2);
        const auto pieces = clipped({{{-5, 4}, {15, 4}}, {{-5, 20}, {15, 20}}}, regions[0]);
        REQUIRE(pieces.size() == 2);
        double length = 0;
        for (const Polyline& piece : pieces) length += std::abs(piece.back().x - piece.front().x);
        CHECK(length == Approx(8));
    }

    TEST_CASE("no lines, no regions") {
        CHECK(regions_between({}, 0.01).empty());
        CHECK(regions_between({{{1, 1}}}, 0.01).empty());
    }
}
