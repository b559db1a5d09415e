#include "backends/drawing/section.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "backends/drawing/regions.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;
using namespace rodwright::drawing;
using doctest::Approx;

namespace {

const AxisView from_front = axis_view({Axis::deep, false}, {Axis::tall, true});
const Bounds everything{{-1000, -1000, -1000}, {1000, 1000, 1000}};

// How much of the paper the hatching covers: its length times its spacing (2 mm).
double hatched_area(const Sheet& sheet) {
    double length = 0;
    for (const Item& item : sheet.items) {
        const auto* stroke = std::get_if<Stroke>(&item);
        if (stroke == nullptr || stroke->role != LineRole::hatch) continue;
        for (std::size_t i = 1; i < stroke->points.size(); ++i) {
            const Point way = stroke->points[i] - stroke->points[i - 1];
            length += std::hypot(way.x, way.y);
        }
    }
    return 2 * length;
}

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("a section through a pocket hatches the wood and not the pocket") {
        Kind kind = kind_of(100, 40, 60);
        kind.features.push_back(body_feature(
            FeatureOp::remove, box_body({vector_of(50, 20, 60), plus_x, plus_y, minus_z}, 40, 10, 30)));
        const std::vector<PlacedSolid> solids = {{build(kind), {}, 0}};
        const Section through = section_through(kernel(), solids, from_front, {50, 20, 30}, everything);
        Sheet sheet;
        draw_section(sheet, through, {1, {0, 0}, {0, 0}});
        CHECK(hatched_area(sheet) == Approx(100 * 60 - 40 * 30).epsilon(0.03));
        // Before the pocket: solid wood.
        const Section before = section_through(kernel(), solids, from_front, {50, 5, 30}, everything);
        Sheet whole;
        draw_section(whole, before, {1, {0, 0}, {0, 0}});
        CHECK(hatched_area(whole) == Approx(100 * 60).epsilon(0.03));
    }

    TEST_CASE("what lies behind the cut is drawn and not hatched") {
        const std::vector<PlacedSolid> solids = {{build(kind_of(100, 40, 60)), {}, 0},
                                                 {build(kind_of(50, 10, 30)), {}, 1}};
        PlacedSolid behind = solids[1];
        behind.pose = Pose{};
        behind.pose.move = {200, 30, 0};
        const Section section =
            section_through(kernel(), {solids[0], behind}, from_front, {0, 20, 0}, everything);
        Sheet sheet;
        draw_section(sheet, section, {1, {0, 0}, {0, 0}});
        CHECK(hatched_area(sheet) == Approx(100 * 60).epsilon(0.03));
        CHECK(section.lines.bounds.right == Approx(250));
    }
}
