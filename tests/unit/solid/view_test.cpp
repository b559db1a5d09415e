#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;
using doctest::Approx;

namespace {

const View front{{0, -1, 0}, {0, 0, 1}};
const View from_above{{0, 0, 1}, {0, 1, 0}};
const View isometric{{-1, -1, 1}, {0, 0, 1}};

using Lines = std::vector<ViewLine>;

Lines look(const Kind& kind, const View& from) {
    return kernel().view({{build(kind), {}, 0}}, from, true);
}

template <typename Where>
long count(const Lines& lines, Where where) {
    return std::count_if(lines.begin(), lines.end(), where);
}

long visible(const Lines& lines) {
    return count(lines, [](const ViewLine& line) { return line.visible; });
}

long hidden(const Lines& lines) {
    return count(lines, [](const ViewLine& line) { return !line.visible; });
}

std::vector<BoxEdge> every_edge() {
    std::vector<BoxEdge> edges;
    for (const Face a : all_faces) {
        for (const Face b : all_faces) {
            if (a < b && axis_of(a) != axis_of(b)) edges.push_back({a, b});
        }
    }
    return edges;
}

// An arc has a start, a point on it and an end: each chord stands for its own part of the circle.
double length_along(const ViewLine& line) {
    double sum = 0;
    for (std::size_t i = 1; i < line.points.size(); ++i) {
        const PaperPoint& a = line.points[i - 1];
        const PaperPoint& b = line.points[i];
        const double chord = std::hypot(b[0] - a[0], b[1] - a[1]);
        const bool arc = line.shape == LineShape::arc;
        sum += arc ? 2 * line.radius * std::asin(chord / (2 * line.radius)) : chord;
    }
    return sum;
}

double seen_outline(const Lines& lines) {
    double sum = 0;
    for (const ViewLine& line : lines) {
        if (line.visible && line.line_class == LineClass::outline) sum += length_along(line);
    }
    return sum;
}

PlacedSolid at(const SolidRef& solid, Point3 move, std::uint32_t tag) {
    PlacedSolid placed{solid, {}, tag};
    placed.pose.move = move;
    return placed;
}

bool reaches(const ViewLine& line, PaperPoint point) {
    return std::any_of(line.points.begin(), line.points.end(),
                       [&](PaperPoint p) { return std::hypot(p[0] - point[0], p[1] - point[1]) < 1e-6; });
}

}  // namespace

TEST_SUITE("unit/solid") {
    TEST_CASE("a box from the front is four lines, the edges behind them given once") {
        const Lines lines = look(kind_of(100, 40, 20), front);
        CHECK(lines.size() == 4);
        CHECK(visible(lines) == 4);
        for (const ViewLine& line : lines) {
            CHECK(line.shape == LineShape::line);
            CHECK(line.line_class == LineClass::sharp);
        }
        // Seen from the front wide runs right and tall up: corners (0,0) and (100,20).
        CHECK(count(lines, [](const ViewLine& line) { return reaches(line, {0, 0}); }) == 2);
        CHECK(count(lines, [](const ViewLine& line) { return reaches(line, {100, 20}); }) == 2);
    }

    TEST_CASE("a box seen cornerwise shows nine edges and hides three") {
        const Lines lines = look(kind_of(100, 40, 20), isometric);
        CHECK(visible(lines) == 9);
        CHECK(hidden(lines) == 3);
        // Isometric projection shortens each axis by sqrt(2/3).
        CHECK(count(lines, [](const ViewLine& line) {
                  return std::abs(length(line) - 100 * std::sqrt(2.0 / 3)) < 1e-6;
              }) == 4);
        CHECK(kernel().view({{build(kind_of(100, 40, 20)), {}, 0}}, isometric, false).size() == 9);
    }

    TEST_CASE("`up` need not be square to the direction of sight") {
        const Lines tilted = look(kind_of(100, 40, 20), {{0, -1, 0}, {0, -3, 1}});
        CHECK(tilted.size() == 4);
        CHECK(count(tilted, [](const ViewLine& line) { return reaches(line, {100, 20}); }) == 2);
    }

    TEST_CASE("a bore through is one whole circle from above and two hidden lines from the front") {
        Kind kind = kind_of(100, 40, 20);
        kind.features.push_back(body_feature(
            FeatureOp::remove, cylinder_body({vector_of(30, 25, 20), plus_x, plus_y, minus_z}, 12, 20)));
        const Lines above = look(kind, from_above);
        CHECK(above.size() == 5);
        const auto arc = std::find_if(above.begin(), above.end(),
                                      [](const ViewLine& line) { return line.shape == LineShape::arc; });
        REQUIRE(arc != above.end());
        CHECK(arc->closed);
        CHECK(arc->visible);
        CHECK(arc->radius == Approx(6).epsilon(1e-9));
        CHECK(arc->centre[0] == Approx(30).epsilon(1e-9));
        CHECK(arc->centre[1] == Approx(25).epsilon(1e-9));
        const Lines side = look(kind, front);
        CHECK(visible(side) == 4);
        CHECK(count(side, [](const ViewLine& line) {
                  return !line.visible && line.line_class == LineClass::outline &&
                         std::abs(length(line) - 20) < 1e-6;
              }) == 2);
    }

    TEST_CASE("a pocket from behind is hidden lines, from the front visible ones") {
        Kind kind = kind_of(100, 40, 20);
        kind.features.push_back(body_feature(
            FeatureOp::remove, box_body({vector_of(50, 0, 10), plus_x, plus_z, plus_y}, 30, 8, 15)));
        const Lines before = look(kind, front);
        CHECK(visible(before) == 8);
        CHECK(hidden(before) == 0);
        const Lines behind = look(kind, {{0, 1, 0}, {0, 0, 1}});
        CHECK(visible(behind) == 4);
        CHECK(hidden(behind) == 4);
        // From above: the pocket's two ends and its bottom; its mouth lies under the front edge.
        const Lines above = look(kind, from_above);
        CHECK(visible(above) == 4);
        CHECK(hidden(above) == 3);
    }

    TEST_CASE("a rounded edge is bounded by smooth lines and ends in arcs") {
        Kind kind = kind_of(100, 40, 20);
        kind.features.push_back(edge_feature(FeatureOp::blend, {{Face::back, Face::top}}, 8));
        const Lines above = look(kind, from_above);
        CHECK(count(above, [](const ViewLine& line) { return line.line_class == LineClass::smooth; }) == 1);
        const Lines end = look(kind, {{1, 0, 0}, {0, 0, 1}});
        const auto arc = std::find_if(end.begin(), end.end(),
                                      [](const ViewLine& line) { return line.shape == LineShape::arc; });
        REQUIRE(arc != end.end());
        CHECK_FALSE(arc->closed);
        CHECK(arc->radius == Approx(8).epsilon(1e-6));
        // Seen along the length deep runs right: the centre is 8 in from the back and the top.
        CHECK(arc->centre[0] == Approx(32).epsilon(1e-6));
        CHECK(arc->centre[1] == Approx(12).epsilon(1e-6));
    }

    // Looked at along an axis the rounds turn away in their own edges; a bore square to that turns away
    // within.
    TEST_CASE("a board rounded all round has a whole outline, with a bore across it or without") {
        Kind plain = kind_of(100, 40, 20);
        plain.features.push_back(edge_feature(FeatureOp::blend, every_edge(), 3));
        Kind bored = plain;
        bored.features.push_back(body_feature(
            FeatureOp::remove, cylinder_body({vector_of(50, 20, 0), plus_x, plus_y, plus_z}, 8, 20)));
        const double round = 2 * std::numbers::pi * 3;
        for (const Kind& kind : {plain, bored}) {
            CHECK(seen_outline(look(kind, front)) == Approx(2 * (94 + 14) + round).epsilon(1e-6));
            CHECK(seen_outline(look(kind, {{1, 0, 0}, {0, 0, 1}})) ==
                  Approx(2 * (34 + 14) + round).epsilon(1e-6));
        }
        CHECK(seen_outline(look(plain, from_above)) == Approx(2 * (94 + 34) + round).epsilon(1e-6));
    }

    TEST_CASE("a part hides what is behind it; each line keeps the tag of its part") {
        const SolidRef board = build(kind_of(100, 10, 50));
        const SolidRef rail = build(kind_of(300, 10, 20));
        // The rail passes 30 behind the board and sticks out 100 on each side.
        const Lines lines = kernel().view({at(board, {100, 0, 0}, 7), at(rail, {0, 40, 15}, 9)}, front, true);
        const auto of_rail = [](bool seen) {
            return [seen](const ViewLine& line) { return line.tag == 9 && line.visible == seen; };
        };
        CHECK(count(lines, [](const ViewLine& line) { return line.tag == 7 && line.visible; }) == 4);
        CHECK(count(lines, of_rail(true)) == 6);   // two ends, and above and below on each side
        CHECK(count(lines, of_rail(false)) == 2);  // above and below behind the board
        for (const ViewLine& line : lines) {
            if (line.tag == 9 && !line.visible) CHECK(length(line) == Approx(100).epsilon(1e-9));
        }
    }

    TEST_CASE("the same solid in several places, turned, is seen in each of them") {
        const SolidRef board = build(kind_of(100, 40, 20));
        PlacedSolid upright{board, {}, 2};
        upright.pose = pose_of({Turn{{minus_y, plus_x, plus_z}}, vector_of(300, 0, 0)});
        const Lines lines = kernel().view({at(board, {}, 1), upright}, front, true);
        CHECK(visible(lines) == 8);
        CHECK(hidden(lines) == 0);
        // Turned a quarter about tall, the second is 40 wide and ends at 300.
        CHECK(count(lines, [](const ViewLine& line) { return reaches(line, {300, 20}); }) == 2);
        CHECK(count(lines, [](const ViewLine& line) { return reaches(line, {260, 20}); }) == 2);
    }

    TEST_CASE("two boards edge to edge share the line between them once") {
        const SolidRef board = build(kind_of(100, 40, 20));
        const Lines lines = kernel().view({at(board, {}, 1), at(board, {100, 0, 0}, 2)}, front, true);
        CHECK(visible(lines) == 7);
        CHECK(hidden(lines) == 0);
    }
}
