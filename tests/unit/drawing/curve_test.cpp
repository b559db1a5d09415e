#include "backends/drawing/curve.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace rodwright::drawing;
using doctest::Approx;

static Point on_piece(const std::vector<Point>& controls, std::size_t piece, double t) {
    const Point* p = controls.data() + 3 * piece;
    const double s = 1 - t;
    return p[0] * (s * s * s) + p[1] * (3 * s * s * t) + p[2] * (3 * s * t * t) + p[3] * (t * t * t);
}

// The largest distance between a curve and the circle it stands for.
static double worst_radius_error(const std::vector<Point>& controls, Point centre, double radius) {
    double worst = 0;
    for (std::size_t piece = 0; 3 * piece + 3 < controls.size(); ++piece) {
        for (int i = 0; i <= 20; ++i) {
            const Point at = on_piece(controls, piece, i / 20.0) - centre;
            worst = std::max(worst, std::abs(std::hypot(at.x, at.y) - radius));
        }
    }
    return worst;
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("an arc as curves is within five millionths of its radius, whatever its turn") {
        for (const double sweep : {0.1, 1.0, -2.5, 2 * std::numbers::pi, -2 * std::numbers::pi}) {
            CAPTURE(sweep);
            const Arc arc{LineRole::visible, {3, 4}, 200, 0.7, sweep};
            const std::vector<Point> controls = bezier_of(arc);
            CHECK(worst_radius_error(controls, arc.centre, arc.radius) < 200 * 5e-6);
            CHECK(controls.front().x == Approx(arc.from().x));
            CHECK(controls.back().y == Approx(arc.to().y));
        }
    }

    TEST_CASE("a curve through points of a circle is near it, closed or not, and has no corner") {
        std::vector<Point> points;
        for (int i = 0; i < 36; ++i)
            points.push_back(Arc{LineRole::visible, {}, 50, 0, 1}.at(i * std::numbers::pi / 18));
        for (const bool closed : {true, false}) {
            const std::vector<Point> controls = bezier_through(points, closed);
            CHECK(controls.size() == (closed ? 109 : 106));
            CHECK(worst_radius_error(controls, {}, 50) < 0.02);
            for (std::size_t i = 3; i + 1 < controls.size(); i += 3) {
                const Point in = controls[i] - controls[i - 1];
                const Point out = controls[i + 1] - controls[i];
                CHECK(in.x * out.y - in.y * out.x == Approx(0).epsilon(1e-9));
            }
        }
    }

    TEST_CASE("a curve through two points is the line between them") {
        const std::vector<Point> controls = bezier_through({{0, 0}, {30, 0}}, false);
        REQUIRE(controls.size() == 4);
        for (const Point& each : controls) CHECK(each.y == 0);
        CHECK(controls[1].x > 0);
        CHECK(controls[2].x < 30);
    }
}
