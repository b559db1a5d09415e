// Tipping against plain statics and the geometry of published tests.
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "compiler/check/stability/tipping.hpp"

using namespace rodwright;

namespace {

constexpr double degree = std::numbers::pi / 180;

// A box on its whole base, its centre of gravity in its middle.
Standing box(double wide, double deep, double tall, double weight) {
    return {edges_of(hull_of({{0, 0}, {wide, 0}, {0, deep}, {wide, deep}})),
            weight,
            {wide / 2, deep / 2, tall / 2}};
}

}  // namespace

TEST_SUITE("reference/check") {
    // Source: statics: a box falls when its centre of gravity is over the edge, at atan(depth / height).
    TEST_CASE("a box falls at the angle of its diagonal") {
        CHECK(tip_angle(box(800, 300, 300, 100)) == doctest::Approx(45));
        CHECK(tip_angle(box(800, 300, 1800, 100)) == doctest::Approx(std::atan(300.0 / 1800) / degree));
    }

    // Source: statics: F h = W d / 2.
    TEST_CASE("pushed at its top a box goes over at W d / (2 h)") {
        const Standing standing = box(800, 400, 1600, 300);
        CHECK(tip_force(standing, {0, -1}, 1600) == doctest::Approx(300 * 200 / 1600.0));
        CHECK(tip_force(standing, {1, 0}, 1600) == doctest::Approx(300 * 400 / 1600.0));
        // Towards a corner: over the nearer edge, as only a part of the push acts across it.
        const double root = std::sqrt(0.5);
        CHECK(tip_force(standing, {root, root}, 1600) == doctest::Approx(300 * 200 / (1600 * root)));
    }

    // Source: the law of the lever.
    TEST_CASE("a load beyond the feet lifts the weight by the law of the lever") {
        const Standing standing = box(800, 400, 700, 300);
        CHECK(tip_load(standing, {400, -100}) == doctest::Approx(300 * 200 / 100.0));
        CHECK(std::isinf(tip_load(standing, {400, 100})));
    }

    // Source: three feet: the edges of a triangle are nearer to its middle than its corners (geometry): the
    // inscribed circle of an equilateral triangle has the radius side / (2 sqrt 3).
    TEST_CASE("a three-legged stool falls over an edge, not over a foot") {
        const double side = 300;
        const Standing stool{edges_of(hull_of({{0, 0}, {side, 0}, {side / 2, side * std::sqrt(3.0) / 2}})),
                             50,
                             {side / 2, side * std::sqrt(3.0) / 6, 200}};
        CHECK(tip_angle(stool) == doctest::Approx(std::atan(side / (2 * std::sqrt(3.0)) / 200) / degree));
    }

    // Source: ASTM F2057-23: a block of 0.43 in under the rear feet. It leans the unit by atan(0.43 / d), so
    // that one which falls by less does not pass (geometry).
    TEST_CASE("the carpet block of the clothing storage test leans a unit by atan(0.43 / depth)") {
        const double depth = 15 * 25.4;
        const double lean = std::atan(0.43 * 25.4 / depth) / degree;
        CHECK(lean == doctest::Approx(1.642).epsilon(0.001));
        Standing unit = box(800, depth, 48 * 25.4, 300);
        unit.centre[1] = unit.centre[2] * std::tan((lean - 0.01) * degree);
        CHECK(tip_angle(unit) < lean);
        unit.centre[1] = unit.centre[2] * std::tan((lean + 0.01) * degree);
        CHECK(tip_angle(unit) > lean);
    }

    // Source: the same test: 60 lb hung on the front of an open drawer. By the law of the lever about the
    // front feet, everything turned by the lean: W (d cos a - h sin a) = P (x cos a + z sin a).
    TEST_CASE("a child on an open drawer of a unit that leans") {
        Standing unit = box(800, 400, 1000, 300);
        const double a = 1.642 * degree;
        const double holds = 300 * (200 * std::cos(a) - 500 * std::sin(a));
        const double beyond = 250 * std::cos(a) + 700 * std::sin(a);
        CHECK(tip_load(unit, {400, -250}, 700, 1.642) == doctest::Approx(holds / beyond));
        // On a level floor the height at which it hangs does not count.
        CHECK(tip_load(unit, {400, -250}, 700) == doctest::Approx(300 * 200 / 250.0));
        // What leans to the front is not nearer to its other edges.
        CHECK(tip_load(unit, {-100, 200}, 700, 1.642) == doctest::Approx(300 * 400 / 100.0));
    }

    // Source: ISO 7174-1:1988, clause 7.1: 600 N down, 50 mm from the edge of a seat; the push that tips it
    // then by the law of the lever, moments about the edge of the feet.
    TEST_CASE("a loaded seat is tipped by what is left of its moment") {
        const Standing stool = box(400, 400, 450, 60);
        const PutOn sitter{600, {200, 50}};
        CHECK(tip_force(stool, {0, -1}, 450, sitter) == doctest::Approx((60 * 200 + 600 * 50) / 450.0));
        const PutOn beyond{600, {200, -50}};
        CHECK(tip_force(stool, {0, -1}, 450, beyond) == 0);
    }

    TEST_CASE("weight outside of the feet falls at once") {
        Standing standing = box(800, 400, 700, 300);
        standing.centre[1] = -20;
        CHECK(tip_angle(standing) < 0);
        CHECK(tip_force(standing, {0, -1}, 700) == 0);
    }

    TEST_CASE("what stands on a line or a point has no edges to stand on") {
        CHECK(edges_of(hull_of({{0, 0}, {100, 0}, {50, 0}})).empty());
        CHECK(edges_of(hull_of({{5, 5}})).empty());
        CHECK(hull_of({{0, 0}, {10, 0}, {10, 10}, {0, 10}, {5, 5}, {5, 0}}).size() == 4);
    }
}
