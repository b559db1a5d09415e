#include <doctest/doctest.h>

#include "backends/drawing/dashes.hpp"

using namespace rodwright::drawing;
using doctest::Approx;

static const std::vector<double> dash_and_gap = {3, 1};

TEST_SUITE("unit/drawing") {
    TEST_CASE("dashes begin and end where their line does") {
        // 3 + 1 + 3 + 1 + 3 = 11 for two periods and a last dash; 22 takes five periods and is 23 at full
        // size.
        for (const double length : {11.0, 22.0, 8.3, 1.2}) {
            CAPTURE(length);
            const auto dashes = dashes_of({{0, 0}, {length, 0}}, dash_and_gap);
            CHECK(dashes.size() >= 2);
            CHECK(dashes.front().front() == Point{0, 0});
            CHECK(dashes.back().back().x == Approx(length));
        }
        const auto dashes = dashes_of({{0, 0}, {22, 0}}, dash_and_gap);
        REQUIRE(dashes.size() == 6);
        CHECK(dashes[0].back().x == Approx(3 * 22.0 / 23));
        CHECK(dashes[1].front().x == Approx(4 * 22.0 / 23));
    }

    TEST_CASE("a dash goes round a corner") {
        const auto dashes = dashes_of({{0, 0}, {2, 0}, {2, 5}}, dash_and_gap);
        REQUIRE(dashes.size() == 2);
        REQUIRE(dashes[0].size() == 3);
        CHECK(dashes[0][1] == Point{2, 0});
        CHECK(dashes[0][2].y == Approx(1));
        CHECK(dashes[1].front().y == Approx(2));
        CHECK(dashes[1].back().y == Approx(5));
    }

    TEST_CASE("too short for two dashes is one") {
        const std::vector<Point> line = {{0, 0}, {0.6, 0}};
        CHECK(dashes_of(line, dash_and_gap) == std::vector<std::vector<Point>>{line});
    }
}
