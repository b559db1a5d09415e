#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <set>

#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;
using doctest::Approx;

static PlacedSolid moved(const SolidRef& solid, Point3 by) {
    PlacedSolid placed{solid, {}, 0};
    placed.pose.move = by;
    return placed;
}

TEST_SUITE("unit/solid") {
    TEST_CASE("bounds are exact: no tolerance is added, curved faces are not overestimated") {
        Kind kind = kind_of(100, 40, 40);
        kind.features.push_back(edge_feature(FeatureOp::blend, long_edges(), 10));
        kind.features.push_back(body_feature(
            FeatureOp::leave, cylinder_body({vector_of(100, 20, 20), plus_y, plus_z, plus_x}, 10, 25)));
        const Bounds bounds = kernel().bounds(*build(kind));
        const Point3 high = {125, 40, 40};
        for (std::size_t i = 0; i < 3; ++i) {
            CHECK(std::abs(bounds.low[i]) < 1e-6);
            CHECK(std::abs(bounds.high[i] - high[i]) < 1e-6);
        }
    }

    TEST_CASE("overlap is the volume that two placed solids share") {
        const SolidRef box = build(kind_of(100, 40, 20));
        CHECK(kernel().overlap(moved(box, {}), moved(box, {90, 35, 0})) == Approx(10.0 * 5 * 20));
        CHECK(kernel().overlap(moved(box, {}), moved(box, {})) == Approx(100.0 * 40 * 20));
        CHECK(kernel().overlap(moved(box, {}), moved(box, {100, 0, 0})) == 0);
        CHECK(kernel().overlap(moved(box, {}), moved(box, {500, 0, 0})) == 0);
    }

    TEST_CASE("overlap follows the turn of a placed solid") {
        const SolidRef box = build(kind_of(100, 40, 20));
        PlacedSolid upright{box, {}, 0};
        upright.pose = pose_of({Turn{{plus_z, plus_x, plus_y}}, vector_of(0, 0, 0)});
        // Kind sizes 100, 40, 20 stand along deep, tall, wide: the shared box is 20 x 40 x 20.
        CHECK(kernel().overlap(moved(box, {}), upright) == Approx(20.0 * 40 * 20));
    }

    TEST_CASE("a tenon in its mortise shares nothing, one that is too long shares its excess") {
        Kind leg = kind_of(700, 40, 40);
        leg.features.push_back(body_feature(
            FeatureOp::remove, box_body({vector_of(650, 40, 20), plus_x, plus_z, minus_y}, 50, 8, 25)));
        Kind rail = kind_of(300, 60, 20);
        for (const auto& [length, shared] : {std::pair{25, 0.0}, std::pair{27, 2.0 * 50 * 8}}) {
            Kind tenoned = rail;
            tenoned.features.push_back(body_feature(
                FeatureOp::leave, box_body({vector_of(0, 30, 10), plus_y, plus_z, minus_x}, 50, 8, length)));
            PlacedSolid beside{build(tenoned), {}, 1};
            // The rail's length runs away from the leg along y, its width along the leg's x.
            beside.pose = pose_of({Turn{{plus_y, plus_x, minus_z}}, vector_of(620, 40, 30)});
            CHECK(kernel().overlap({build(leg), {}, 0}, beside) == Approx(shared).epsilon(1e-9));
        }
    }

    TEST_CASE("triangles close the solid, look outward and tell faces apart") {
        Kind kind = kind_of(100, 40, 20);
        kind.features.push_back(body_feature(
            FeatureOp::remove, cylinder_body({vector_of(50, 20, 20), plus_x, plus_y, minus_z}, 20, 20)));
        const SolidRef solid = build(kind);
        double volume = 0;
        std::set<std::uint32_t> faces;
        for (const Triangle& each : kernel().triangles(*solid, 0.01)) {
            faces.insert(each.face);
            const auto& [a, b, c] = each.corners;
            const Point3 cross = {(b[1] - a[1]) * (c[2] - a[2]) - (b[2] - a[2]) * (c[1] - a[1]),
                                  (b[2] - a[2]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[2] - a[2]),
                                  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])};
            CHECK(cross[0] * each.normal[0] + cross[1] * each.normal[1] + cross[2] * each.normal[2] > 0);
            // A tetrahedron with the origin for each triangle (divergence theorem).
            volume += (a[0] * cross[0] + a[1] * cross[1] + a[2] * cross[2]) / 6;
        }
        CHECK(faces.size() == 7);
        // The mesh's bore is an inscribed polygon: within the tolerance of 0.01 of the radius of 10.
        const double low = 100.0 * 40 * 20 - pi * 100 * 20;
        CHECK(volume >= low - 1e-6);
        CHECK(volume <= low + 2 * pi * 10 * 0.01 * 20);
    }
}
