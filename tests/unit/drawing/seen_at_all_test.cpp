// Leaving out what is wholly hidden changes nothing that a view shows.
#include "backends/drawing/seen_at_all.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <map>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/curve.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::drawing;
using namespace rodwright::testing;

namespace {

std::vector<ShadedPart> parts_of(const packet::Context& context) {
    std::vector<ShadedPart> parts;
    for (const PlacedSolid& placed : context.placed) {
        const auto kind = static_cast<std::size_t>(context.piece.parts[placed.tag].kind);
        parts.push_back({&context.triangles[kind], placed.pose, placed.tag, black});
    }
    return parts;
}

// Millimetres of lines that are drawn as edges, whoever's they are: each line of the paper is given once.
double length_of_edges(const Projected& view) {
    double sum = 0;
    for (const ViewLine& line : view.lines) {
        if (line.line_class != LineClass::sharp && line.line_class != LineClass::outline) continue;
        const std::vector<Point> points = points_along(drawn_line(line, {}, LineRole::visible));
        for (std::size_t i = 1; i < points.size(); ++i)
            sum += std::hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
    }
    return sum;
}

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("views without what is hidden are the views of all") {
        const std::vector<View> views = {axis_view({Axis::deep, false}, {Axis::tall, true}).view(),
                                         axis_view({Axis::tall, true}, {Axis::deep, true}).view(),
                                         axis_view({Axis::wide, true}, {Axis::tall, true}).view(),
                                         isometric_view()};
        std::size_t left_out = 0;
        for (const std::string& name : example_names()) {
            Making& making = made_example(name);
            const packet::Context context = making.context({});
            const std::vector<ShadedPart> parts = parts_of(context);
            for (const View& view : views) {
                CAPTURE(name);
                CAPTURE(view.towards[0]);
                CAPTURE(view.towards[2]);
                const std::vector<PlacedSolid> seen = seen_at_all(context.placed, parts, view);
                left_out += context.placed.size() - seen.size();
                const Projected all = project(context.kernel, context.placed, view, false);
                const Projected some = project(context.kernel, seen, view, false);
                CHECK(length_of_edges(some) == doctest::Approx(length_of_edges(all)).epsilon(1e-4));
                CHECK(some.bounds.contains(all.bounds, 0.01));
            }
        }
        CHECK(left_out > 20);
    }

    TEST_CASE("what shows at a side, or through an opening, is not left out") {
        const SolidRef board = build(kind_of(100, 50, 10));
        Kind open = kind_of(100, 50, 10);
        open.features.push_back(body_feature(
            FeatureOp::remove, box_body({vector_of(50, 25, 0), plus_x, plus_y, plus_z}, 10, 10, 10)));
        const SolidRef window = build(open);
        const std::vector<Triangle> of_board = kernel().triangles(*board, 0.1);
        const std::vector<Triangle> of_window = kernel().triangles(*window, 0.1);
        const View above = axis_view(plus_z, plus_y).view();
        const auto count = [&](const SolidRef& over, const std::vector<Triangle>& triangles, double shift) {
            Pose pose;
            pose.move = {shift, 0, 20};
            return seen_at_all({{board, {}, 0}, {over, pose, 1}},
                               {{&of_board, {}, 0, black}, {&triangles, pose, 1, black}}, above)
                .size();
        };
        CHECK(count(board, of_board, 0) == 1);
        CHECK(count(board, of_board, 0.1) == 2);
        CHECK(count(window, of_window, 0) == 2);
        // Beside each other in one plane neither hides the other.
        CHECK(seen_at_all({{board, {}, 0}, {board, {}, 1}},
                          {{&of_board, {}, 0, black}, {&of_board, {}, 1, black}}, above)
                  .size() == 2);
    }
}
