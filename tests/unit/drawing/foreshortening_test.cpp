#include "backends/packet/parts/foreshortening.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace rodwright;
using namespace rodwright::packet;
using doctest::Approx;

namespace {

const Direction along{Axis::wide, true};

// 1000 mm long, with pockets from 100 to 150 and from 800 to 850.
Kind rail() {
    Kind kind;
    kind.size = Vector{{Rational(1000), Rational(60), Rational(20)}};
    for (const long start : {100L, 800L}) {
        Feature pocket;
        pocket.op = FeatureOp::remove;
        pocket.body = {BodyForm::box,
                       {Vector{{Rational(start + 25), Rational(30), Rational(20)}},
                        along,
                        {Axis::deep, true},
                        {Axis::tall, false}},
                       50,
                       20,
                       10,
                       {}};
        kind.features.push_back(pocket);
    }
    return kind;
}

ViewLine line(PaperPoint from, PaperPoint to) {
    ViewLine made;
    made.points = {from, to};
    return made;
}

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("the longest plain stretch is left out, but for a stub at either end") {
        const auto stretch = foreshortening(rail(), along, 0);
        REQUIRE(stretch.has_value());
        CHECK(stretch->from == Approx(150 + 30));
        CHECK(stretch->to == Approx(800 - 30));
        CHECK(stretch->at(100) == Approx(100));
        // 590 are left out and a gap of 20 drawn: 570 less.
        CHECK(stretch->at(850) == Approx(280));
    }

    TEST_CASE("a short part is drawn whole") {
        Kind kind = rail();
        kind.size[Axis::wide] = 300;
        kind.features.resize(1);
        CHECK_FALSE(foreshortening(kind, along, 0).has_value());
    }

    TEST_CASE("a slope keeps its slope on both sides of the break") {
        const Foreshortening stretch{200, 800, 20};
        const auto view = shortened(drawing::projected({line({0, 0}, {1000, 50})}), stretch);
        REQUIRE(view.lines.size() == 2);
        CHECK(view.lines[0].points[1][0] == Approx(200));
        CHECK(view.lines[0].points[1][1] == Approx(10));
        CHECK(view.lines[1].points[0][0] == Approx(220));
        CHECK(view.lines[1].points[0][1] == Approx(40));
        CHECK(view.bounds.right == Approx(420));
    }

    TEST_CASE("lines beside the stretch stay or move whole, those within it go") {
        const Foreshortening stretch{200, 800, 20};
        const auto view = shortened(drawing::projected({line({150, 0}, {150, 9}), line({500, 0}, {500, 9}),
                                                        line({900, 0}, {900, 9})}),
                                    stretch);
        REQUIRE(view.lines.size() == 2);
        CHECK(view.lines[0].points[0][0] == Approx(150));
        CHECK(view.lines[1].points[0][0] == Approx(320));
    }
}
