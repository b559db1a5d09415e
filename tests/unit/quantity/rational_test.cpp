#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "compiler/quantity/rational.hpp"

using namespace rodwright;

TEST_SUITE("unit/quantity") {
    TEST_CASE("floor, ceil and round of hand-picked values") {
        CHECK(rodwright::floor(ratio(7, 2)) == 3);
        CHECK(rodwright::floor(ratio(-7, 2)) == -4);
        CHECK(rodwright::floor(Rational(5)) == 5);
        CHECK(rodwright::ceil(ratio(7, 2)) == 4);
        CHECK(rodwright::ceil(ratio(-7, 2)) == -3);
        CHECK(rodwright::round(ratio(7, 2)) == 4);
        CHECK(rodwright::round(ratio(-7, 2)) == -4);
        CHECK(rodwright::round(ratio(10, 3)) == 3);
        CHECK(rodwright::round(ratio(-11, 3)) == -4);
        CHECK(rodwright::round(Rational(0)) == 0);
    }

    TEST_CASE("floor, ceil and round of random values keep their definitions") {
        std::mt19937 random(1);
        for (int i = 0; i < 2000; ++i) {
            const Rational value = ratio(static_cast<long>(random() % 20001) - 10000, random() % 97 + 1);
            CAPTURE(to_text(value));
            const Rational below = rodwright::floor(value);
            const Rational nearest = rodwright::round(value);
            REQUIRE(below.get_den() == 1);
            REQUIRE(below <= value);
            REQUIRE(value < below + 1);
            REQUIRE(rodwright::ceil(value) == -rodwright::floor(-value));
            REQUIRE(abs(nearest - value) <= ratio(1, 2));
            REQUIRE(rodwright::round(-value) == -nearest);
        }
    }

    TEST_CASE("a double comes back as the nearest multiple of 2^-40") {
        const Rational step = Rational(1) / Rational(mpz_class(1) << 40);
        CHECK(from_double(0.5) == ratio(1, 2));
        CHECK(from_double(-3.0) == -3);
        CHECK(from_double(1e-20) == 0);
        for (const double value : {0.1, -0.7853981633974483, 12345.678, 1e9 / 7}) {
            const Rational back = from_double(value);
            const Rational steps = back / step;
            CHECK(steps.get_den() == 1);
            CHECK(abs(back - Rational(value)) <= step / 2);
        }
    }

    TEST_CASE("two doubles that differ in the last bit are the same rational") {
        const double value = 0.7071067811865475;
        CHECK(from_double(value) == from_double(std::nextafter(value, 1.0)));
    }

    TEST_CASE("text of a rational is in lowest terms") {
        CHECK(to_text(ratio(10, 16)) == "5/8");
        CHECK(to_text(ratio(-6, 2)) == "-3");
    }
}
