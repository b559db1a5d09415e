// Screws, dowels and closed forms of beams against published equations and numbers.
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "compiler/check/strength/bonds.hpp"
#include "compiler/check/strength/closed_form.hpp"
#include "compiler/check/strength/cross_section.hpp"

using namespace rodwright;
using namespace rodwright::strength;

namespace {

constexpr double pound = 4.4482216;  // N
constexpr double inch = 25.4;        // mm

// The surface of a prism along x over a polygon in y and z, open at its ends: only sides are cut across.
std::vector<Triangle> prism(const std::vector<std::array<double, 2>>& outline, double length) {
    std::vector<Triangle> surface;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const auto& a = outline[i];
        const auto& b = outline[(i + 1) % outline.size()];
        const Point3 normal = {0, b[1] - a[1], a[0] - b[0]};
        const std::array<Point3, 4> corners = {
            Point3{0, a[0], a[1]}, {length, a[0], a[1]}, {length, b[0], b[1]}, {0, b[0], b[1]}};
        surface.push_back({{corners[0], corners[1], corners[2]}, normal, 0});
        surface.push_back({{corners[0], corners[2], corners[3]}, normal, 0});
    }
    return surface;
}

}  // namespace

TEST_SUITE("reference/strength") {
    // Source: Wood Handbook, FPL-GTR-282, equation 8-10: 108.25 G^2 D L newtons, 15,700 G^2 D L pounds.
    // Number 8 screw, 4.17 mm, 25 mm of thread: in hard maple 4,479 N, in eastern white pine 1,382 N.
    TEST_CASE("withdrawal of wood screws") {
        CHECK(screw_withdrawal(0.63, 4.17, 25) == doctest::Approx(4479).epsilon(0.001));
        CHECK(screw_withdrawal(0.35, 4.17, 25) == doctest::Approx(1382).epsilon(0.001));
        CHECK(screw_withdrawal(0.5, 0.164 * inch, inch) ==
              doctest::Approx(15700 * 0.25 * 0.164 * pound).epsilon(0.001));
    }

    // Source: the same, equation 8-13 with K of table 8-4 for hardwoods, by specific gravity.
    TEST_CASE("side loads of wood screws at the proportional limit: K D^2") {
        CHECK(screw_side_load(0.40, 4.17) == doctest::Approx(23.17 * 4.17 * 4.17));
        CHECK(screw_side_load(0.50, 4.17) == doctest::Approx(31.99 * 4.17 * 4.17));
        CHECK(screw_side_load(0.63, 4.83) == doctest::Approx(44.13 * 4.83 * 4.83));
    }

    // Source: the same, equation 8-3: 16,600 G^1.84 psi.
    TEST_CASE("bearing strength under dowels, in pounds per square inch") {
        for (const double gravity : {0.35, 0.5, 0.63}) {
            CHECK(dowel_bearing(gravity) ==
                  doctest::Approx(16600 * std::pow(gravity, 1.84) * 0.006894757).epsilon(0.001));
        }
    }

    // Source: equation 9-2 with table 9-1, a red oak shelf of 900 x 250 x 19 mm under 25 lb per running foot:
    // without shear, with the tested modulus, 1.739 mm; with E_L and G = 0.081 E_L 1.581 + 0.008 = 1.589 mm.
    TEST_CASE("a shelf's sag by the handbook's closed form") {
        const double load = 0.365 * 900;
        CHECK(handbook_sag({900, 250, 19, 12548, 1e9}, load, true, Ends::resting) ==
              doctest::Approx(1.739).epsilon(0.001));
        const double along = 1.1 * 12548;
        CHECK(handbook_sag({900, 250, 19, along, 0.081 * along}, load, true, Ends::resting) ==
              doctest::Approx(1.589).epsilon(0.001));
    }

    // Source: table 9-1: kb 5/384, 1/48, 1/384, 1/192; held fast a fifth and a quarter of the bending.
    TEST_CASE("held fast, a beam bends a fifth under a spread load and a quarter under one in its middle") {
        const SimpleBeam stiff_in_shear = {900, 250, 19, 12548, 1e12};
        const auto ratio = [&](bool spread) {
            return handbook_sag(stiff_in_shear, 100, spread, Ends::resting) /
                   handbook_sag(stiff_in_shear, 100, spread, Ends::held_fast);
        };
        CHECK(ratio(true) == doctest::Approx(5).epsilon(1e-4));
        CHECK(ratio(false) == doctest::Approx(4).epsilon(1e-4));
    }

    // Source: Wood Handbook, FPL-GTR-282, equations 9-25 to 9-28, and statics: a long column carries Euler's
    // load, pi^2 E I / L^2; a short one crushes. A square post of 40 mm, 1000 mm between hinges, E 12000,
    // crushing 50 MPa: L / r = 86.6, Euler 15.79 MPa; with c = 0.8 (1 + 0.3158) / 1.6 = 0.8224, less the root
    // of 0.6763 - 0.3948: 0.2918 of 50 MPa (by hand).
    TEST_CASE("columns: Euler, crushing, and Ylinen's curve between them") {
        const auto column = [](double length, double crushing) {
            return Column{length, 1600, std::pow(40, 4) / 12, 12000, crushing};
        };
        CHECK(column(1000, 50).slenderness() == doctest::Approx(86.6).epsilon(0.001));
        CHECK(column_strength(column(1000, 50), 0.8) == doctest::Approx(0.2918 * 50 * 1600).epsilon(0.002));
        const double euler = std::pow(std::numbers::pi, 2) * 12000 * std::pow(40, 4) / 12 / (1e4 * 1e4);
        CHECK(column_strength(column(1e4, 50), 0.8) == doctest::Approx(euler).epsilon(0.002));
        CHECK(column_strength(column(50, 50), 0.8) == doctest::Approx(50 * 1600).epsilon(0.01));
        // With c = 1 it is the lesser of the two.
        CHECK(column_strength(column(1000, 10), 1) == doctest::Approx(10 * 1600).epsilon(0.0001));
    }

    // Source: Wood Handbook, chapter 9: I = b h^3 / 12 and pi d^4 / 64, S = b h^2 / 6; textbook values of a
    // right triangle, b h^3 / 36 and -b^2 h^2 / 72.
    TEST_CASE("sections cut from surfaces: rectangle, circle, triangle") {
        const auto box = cut_across(prism({{0, 0}, {60, 0}, {60, 20}, {0, 20}}, 100), 37);
        REQUIRE(box.has_value());
        CHECK(box->area == doctest::Approx(1200));
        CHECK(box->inertia_y == doctest::Approx(60 * 8000.0 / 12));
        CHECK(box->inertia_z == doctest::Approx(20 * 216000.0 / 12));
        CHECK(box->stress(0, 1e5, 0) == doctest::Approx(1e5 / (60 * 400.0 / 6)));
        CHECK(box->stress(2400, 0, 1e5) == doctest::Approx(2 + 1e5 / (20 * 3600.0 / 6)));

        std::vector<std::array<double, 2>> round;
        for (int i = 0; i < 360; ++i) {
            const double angle = i * std::numbers::pi / 180;
            round.push_back({12.5 * std::cos(angle), 12.5 * std::sin(angle)});
        }
        const auto circle = cut_across(prism(round, 100), 50);
        REQUIRE(circle.has_value());
        CHECK(circle->area == doctest::Approx(std::numbers::pi * 625 / 4).epsilon(0.001));
        CHECK(circle->inertia_y == doctest::Approx(std::numbers::pi * std::pow(25, 4) / 64).epsilon(0.001));

        const auto triangle = cut_across(prism({{0, 0}, {30, 0}, {0, 60}}, 100), 50);
        REQUIRE(triangle.has_value());
        CHECK(triangle->inertia_y == doctest::Approx(30 * std::pow(60, 3) / 36));
        CHECK(triangle->product == doctest::Approx(-30.0 * 30 * 60 * 60 / 72));
        CHECK(triangle->y == doctest::Approx(10));
    }

    // Source: Wood Handbook, chapter 9: K = h b^3 / phi, phi from 7.1 at h = b down to 3 for a thin strip.
    TEST_CASE("torsion of rectangles by Saint-Venant's rule, within 11 %") {
        CHECK(rectangle(40, 40).as_beam().torsion == doctest::Approx(std::pow(40, 4) / 7.1).epsilon(0.11));
        CHECK(rectangle(400, 10).as_beam().torsion == doctest::Approx(400 * 1000.0 / 3).epsilon(0.11));
        CHECK(rectangle(400, 10).as_beam().torsion < 400 * 1000.0 / 3);
    }
}
