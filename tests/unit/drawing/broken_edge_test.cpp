// Where a pictorial cuts a part off, it is drawn freehand.
#include "backends/drawing/broken_edge.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "backends/drawing/depth_buffer.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::drawing;
using namespace rodwright::testing;

namespace {

std::size_t count_broken(const Sheet& sheet) {
    return static_cast<std::size_t>(
        std::count_if(sheet.items.begin(), sheet.items.end(), [](const Item& item) {
            const auto* stroke = std::get_if<Stroke>(&item);
            return stroke != nullptr && stroke->role == LineRole::broken;
        }));
}

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("the broken edges of a board are those of the face that was cut, wherever it is placed") {
        const SolidRef cut = kernel().within(build(kind_of(100, 40, 20)), {{0, -1, -1}, {60, 41, 21}});
        const std::vector<Triangle> triangles = kernel().triangles(*cut, 0.1);
        Pose pose;
        pose.move = {5, 6, 7};
        const std::vector<Segment3> edges =
            broken_edges(triangles, pose, {{-500, -500, -500}, {65, 500, 500}});
        CHECK(edges.size() == 4);
        double round = 0;
        for (const auto& [a, b] : edges) {
            CHECK(a[0] == doctest::Approx(65));
            CHECK(b[0] == doctest::Approx(65));
            round += std::hypot(b[1] - a[1], b[2] - a[2]);
        }
        CHECK(round == doctest::Approx(2 * (40 + 20)));
        CHECK(broken_edges(triangles, pose, {{-500, -500, -500}, {500, 500, 500}}).empty());
    }

    TEST_CASE("a line runs along edges with all of its length") {
        const std::vector<Segment> edges = {{Point{0, 0}, Point{10, 0}}, {Point{10, 0}, Point{10, 10}}};
        const auto line = [](PaperPoint a, PaperPoint b) {
            ViewLine made;
            made.points = {a, b};
            return made;
        };
        CHECK(runs_along(line({2, 0}, {8, 0}), edges));
        CHECK(!runs_along(line({2, 0}, {12, 0}), edges));
        CHECK(!runs_along(line({0, 0}, {10, 10}), edges));  // from edge to edge, across
        CHECK(!runs_along(line({2, 0}, {8, 0}), {}));
    }

    TEST_CASE("freehand lines end where they should and stay near the straight one") {
        const Freehand line = freehand({0, 0}, {40, 0});
        const std::vector<Point>& points = line.drawn;
        REQUIRE(points.size() == line.straight.size());
        CHECK(points.front() == Point{0, 0});
        CHECK(std::hypot(points.back().x - 40, points.back().y) < 1e-9);
        double swing = 0;
        for (const Point& point : points) {
            CHECK(point.y > -1e-9);  // to the left, if anywhere
            swing = std::max(swing, point.y);
        }
        CHECK(swing > 0.5);
        CHECK(swing <= 1);
    }

    TEST_CASE("joint sheets break parts off, other sheets show none that is") {
        Making& making = made_example("keepers_table");
        for (const Sheet& sheet : making.sheets({})) {
            CAPTURE(sheet.title);
            if (sheet.title.starts_with("Joint")) {
                CHECK(count_broken(sheet) >= 4);
            } else {
                CHECK(count_broken(sheet) == 0);
            }
        }
    }
}
