// Volumes, areas and centres of solids against the mensuration formulas of geometry handbooks, written out
// from memory; each test names its formula.
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;
using doctest::Approx;

static Kind trimmed(Kind kind, const std::vector<Body>& trims) {
    for (const Body& body : trims) kind.features.push_back(body_feature(FeatureOp::trim, body));
    return kind;
}

TEST_SUITE("reference/solid") {
    // Frustum of a pyramid with a square base a and a parallel top b, h apart:
    // V = h / 3 (A + B + sqrt(A B)), A = a^2, B = b^2.
    TEST_CASE("a leg tapered on all four sides is the frustum of a pyramid") {
        const Kind leg = trimmed(
            kind_of(600, 40, 40),
            {prism_body({vector_of(0, 0, 0), plus_x, plus_y, plus_z}, {{0, 0}, {600, 0}, {600, 8}}, 40),
             prism_body({vector_of(0, 0, 0), plus_x, plus_y, plus_z}, {{0, 40}, {600, 32}, {600, 40}}, 40),
             prism_body({vector_of(0, 0, 0), plus_x, plus_z, plus_y}, {{0, 0}, {600, 0}, {600, 8}}, 40),
             prism_body({vector_of(0, 0, 0), plus_x, plus_z, plus_y}, {{0, 40}, {600, 32}, {600, 40}}, 40)});
        const double large = 40.0 * 40;
        const double small = 24.0 * 24;
        CHECK(volume(leg) == Approx(600.0 / 3 * (large + small + std::sqrt(large * small))).epsilon(1e-12));
        // Its centre lies at h (A + 2 sqrt(A B) + 3 B) / (4 (A + sqrt(A B) + B)) from the larger end.
        const double root = std::sqrt(large * small);
        const double centre = 600 * (large + 2 * root + 3 * small) / (4 * (large + root + small));
        CHECK(kernel().centre_of_mass(*build(leg))[0] == Approx(centre).epsilon(1e-12));
    }

    // Prismatoid: V = h / 6 (A1 + 4 Am + A2), Am the section half way.
    TEST_CASE("a wedge-ended block is a prismatoid") {
        // Width 60 to 30 on one side, thickness 30 to 12 on another, over 500.
        const Kind block = trimmed(
            kind_of(500, 60, 30),
            {prism_body({vector_of(0, 0, 0), plus_x, plus_y, plus_z}, {{0, 60}, {500, 30}, {500, 60}}, 30),
             prism_body({vector_of(0, 0, 0), plus_x, plus_z, plus_y}, {{0, 30}, {500, 12}, {500, 30}}, 60)});
        const double middle = 45.0 * 21;
        CHECK(volume(block) == Approx(500.0 / 6 * (60.0 * 30 + 4 * middle + 30.0 * 12)).epsilon(1e-12));
    }

    // Spandrel (the corner between a quarter circle and its two tangents): area (1 - pi/4) r^2, its centre
    // (10 - 3 pi) / (12 - 3 pi) r from each tangent; rounded length 2 (l + w) - 8 r + 2 pi r.
    TEST_CASE("a board with one edge rounded loses a spandrel") {
        Kind board = kind_of(300, 80, 24);
        board.features.push_back(edge_feature(FeatureOp::blend, {{Face::back, Face::top}}, 10));
        const double spandrel = (1 - pi / 4) * 100;
        const double area = 80.0 * 24 - spandrel;
        CHECK(volume(board) == Approx(300 * area).epsilon(1e-9));
        const double from_edge = 10 * (10 - 3 * pi) / (12 - 3 * pi);
        const Point3 centre = kernel().centre_of_mass(*build(board));
        CHECK(centre[1] == Approx((80.0 * 24 * 40 - spandrel * (80 - from_edge)) / area).epsilon(1e-9));
        CHECK(centre[2] == Approx((80.0 * 24 * 12 - spandrel * (24 - from_edge)) / area).epsilon(1e-9));
        const double round = 2 * (80.0 + 24) - 2 * 10 + pi * 10 / 2;
        CHECK(kernel().surface_area(*build(board)) == Approx(2 * area + 300 * round).epsilon(1e-9));
    }

    // Right circular cylinder: V = pi r^2 h, lateral area 2 pi r h.
    TEST_CASE("a dowel hole takes away a cylinder and adds its wall") {
        Kind rail = kind_of(200, 60, 22);
        rail.features.push_back(body_feature(
            FeatureOp::remove, cylinder_body({vector_of(0, 20, 11), plus_y, plus_z, plus_x}, 8, 30)));
        CHECK(volume(rail) == Approx(200.0 * 60 * 22 - pi * 16 * 30).epsilon(1e-9));
        const double box = 2 * (200.0 * 60 + 200 * 22 + 60 * 22);
        CHECK(kernel().surface_area(*build(rail)) == Approx(box + 2 * pi * 4 * 30).epsilon(1e-9));
    }

    // Two equal cylinders that cross square: their common part is 16/3 r^3.
    TEST_CASE("crossing bores share sixteen thirds of the cube of their radius") {
        Kind block = kind_of(60, 60, 60);
        block.features.push_back(body_feature(
            FeatureOp::remove, cylinder_body({vector_of(0, 30, 30), plus_y, plus_z, plus_x}, 20, 60)));
        block.features.push_back(body_feature(
            FeatureOp::remove, cylinder_body({vector_of(30, 0, 30), plus_x, plus_z, plus_y}, 20, 60)));
        const double bores = 2 * pi * 100 * 60 - 16.0 / 3 * 1000;
        CHECK(volume(block) == Approx(60.0 * 60 * 60 - bores).epsilon(1e-5));
    }

    // Trapezoid: area (a + b) / 2 h; the wider side of a dovetail is a + 2 h tan(angle).
    TEST_CASE("a dovetail housing is a trapezoid as wide as its bit's angle makes it") {
        // A 14 degree bit 1/2 in wide at its end, 3/8 in deep, across a board 4 in wide. The tangent enters
        // as an exact ratio near it, from a table of tangents: tan 14 deg = 0.249328.
        const Rational tangent = ratio(249328, 1000000);
        const Rational depth = inches(3, 8);
        const Rational half = inches(1, 4);
        const Rational mouth = half - depth * tangent;
        Kind board = kind_of(inches(12), inches(4), inches(3, 4));
        const Vector at = vector_of(inches(6), 0, inches(3, 4));
        board.features.push_back(
            body_feature(FeatureOp::remove,
                         prism_body({at, plus_x, minus_z, plus_y},
                                    {{-mouth, 0}, {mouth, 0}, {half, depth}, {-half, depth}}, inches(4))));
        const double wide = 12.7;
        const double narrow = 12.7 - 2 * 9.525 * std::tan(14 * pi / 180);
        const double housing = (wide + narrow) / 2 * 9.525 * 101.6;
        CHECK(volume(board) == Approx(304.8 * 101.6 * 19.05 - housing).epsilon(1e-7));
    }
}
