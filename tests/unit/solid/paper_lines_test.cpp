#include "compiler/solid/paper_lines.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;
using doctest::Approx;

namespace {

ViewLine straight(PaperPoint a, PaperPoint b, bool visible = true, std::uint32_t tag = 0) {
    ViewLine line;
    line.shape = LineShape::line;
    line.visible = visible;
    line.tag = tag;
    line.points = {a, b};
    return line;
}

ViewLine arc(double from, double to, bool visible = true, double radius = 10) {
    ViewLine line;
    line.visible = visible;
    set_shape(line, sample(
                        [&](double t) {
                            return PaperPoint{radius * std::cos(t), radius * std::sin(t)};
                        },
                        from, to));
    return line;
}

}  // namespace

TEST_SUITE("unit/solid") {
    TEST_CASE("points on a line, a circle and neither") {
        CHECK(arc(0, 2).shape == LineShape::arc);
        CHECK_FALSE(arc(0, 2).closed);
        CHECK(arc(0, 2).radius == Approx(10).epsilon(1e-9));
        CHECK(arc(1, 1 + 2 * pi).closed);
        ViewLine flat;
        set_shape(flat, {{0, 0}, {1, 1}, {3, 3}});
        CHECK(flat.shape == LineShape::line);
        ViewLine ellipse;
        set_shape(ellipse, sample(
                               [](double t) {
                                   return PaperPoint{20 * std::cos(t), 10 * std::sin(t)};
                               },
                               0, 2));
        CHECK(ellipse.shape == LineShape::curve);
        CHECK_FALSE(ellipse.closed);
    }

    TEST_CASE("a sampled curve stays within the tolerance") {
        const double radius = 500;
        const auto points = sample(
            [&](double t) {
                return PaperPoint{radius * std::cos(t), radius * std::sin(t)};
            },
            0, 2 * pi);
        for (std::size_t i = 1; i < points.size(); ++i) {
            const double x = (points[i][0] + points[i - 1][0]) / 2;
            const double y = (points[i][1] + points[i - 1][1]) / 2;
            CHECK(radius - std::hypot(x, y) <= paper::chord_tolerance);
        }
    }

    TEST_CASE("a circle seen from its side is a line as long as it is wide") {
        ViewLine line;
        set_shape(line, sample([](double t) { return PaperPoint{10 * std::cos(t + 0.3), 0}; }, 0, 2 * pi));
        REQUIRE(line.shape == LineShape::line);
        CHECK(length(line) == Approx(20).epsilon(1e-3));
    }

    TEST_CASE("overlapping lines become one, whichever way they run") {
        const auto once = each_line_once({straight({0, 0}, {10, 5}), straight({16, 8}, {4, 2})});
        REQUIRE(once.size() == 1);
        CHECK(length(once[0]) == Approx(std::hypot(16, 8)));
    }

    TEST_CASE("upright lines are found again though they lean a little either way") {
        const double lean = 1e-6;
        const auto once =
            each_line_once({straight({70, 0}, {70 + lean, 100}), straight({70, 50}, {70 - lean, 120})});
        REQUIRE(once.size() == 1);
        CHECK(length(once[0]) == Approx(120));
    }

    TEST_CASE("parallel lines apart and lines that only touch stay") {
        CHECK(each_line_once({straight({0, 0}, {10, 0}), straight({0, 0.1}, {10, 0.1})}).size() == 2);
        CHECK(each_line_once({straight({0, 0}, {10, 0}), straight({10, 0}, {10, 10})}).size() == 2);
        CHECK(each_line_once({straight({0, 0}, {10, 0}), straight({11, 0}, {20, 0})}).size() == 2);
    }

    TEST_CASE("visible wins over hidden, and what is left of the hidden line stays") {
        const auto once = each_line_once({straight({0, 0}, {100, 0}, false), straight({40, 0}, {60, 0})});
        REQUIRE(once.size() == 3);
        double seen = 0;
        double behind = 0;
        for (const ViewLine& line : once) (line.visible ? seen : behind) += length(line);
        CHECK(seen == Approx(20));
        CHECK(behind == Approx(80));
    }

    TEST_CASE("a hidden edge is kept under a smooth line") {
        ViewLine smooth = straight({0, 0}, {100, 0});
        smooth.line_class = LineClass::smooth;
        const auto once = each_line_once({smooth, straight({0, 0}, {100, 0}, false)});
        REQUIRE(once.size() == 1);
        CHECK(once[0].line_class == LineClass::sharp);
        CHECK_FALSE(once[0].visible);
    }

    TEST_CASE("of two parts' lines the one with the lesser tag is kept; the other's rest keeps its own") {
        const auto once =
            each_line_once({straight({5, 0}, {15, 0}, true, 4), straight({0, 0}, {10, 0}, true, 3)});
        REQUIRE(once.size() == 2);
        CHECK(once[0].tag == 3);
        CHECK(length(once[0]) == Approx(10));
        CHECK(once[1].tag == 4);
        CHECK(length(once[1]) == Approx(5));
    }

    TEST_CASE("arcs of one circle are joined over the start of its range, and to a whole circle") {
        const auto joined = each_line_once({arc(-1, 0.5), arc(0.4, 2)});
        REQUIRE(joined.size() == 1);
        CHECK_FALSE(joined[0].closed);
        CHECK(joined[0].points[0][1] == Approx(10 * std::sin(-1.0)));
        CHECK(joined[0].points[2][0] == Approx(10 * std::cos(2.0)));
        const auto whole = each_line_once({arc(0, pi), arc(pi, 2 * pi), arc(1, 2, false)});
        REQUIRE(whole.size() == 1);
        CHECK(whole[0].closed);
        CHECK(whole[0].visible);
        CHECK(each_line_once({arc(0, 1), arc(0, 1, true, 11)}).size() == 2);
    }

    TEST_CASE("curves that cover each other whole are given once") {
        ViewLine curve;
        set_shape(curve, sample(
                             [](double t) {
                                 return PaperPoint{20 * std::cos(t), 10 * std::sin(t)};
                             },
                             0, 2));
        ViewLine backward = curve;
        std::reverse(backward.points.begin(), backward.points.end());
        backward.visible = false;
        const auto once = each_line_once({backward, curve});
        REQUIRE(once.size() == 1);
        CHECK(once[0].visible);
    }
}
