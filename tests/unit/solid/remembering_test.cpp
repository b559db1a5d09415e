// The kernel of a store answers a question that it knows from memory, and no other.
#include <doctest/doctest.h>

#include "compiler/solid/remembering_kernel.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

class CountingKernel final : public SolidKernel {
  public:
    SolidRef build(const Piece&, const Kind&, Diagnostics&) const override { return nullptr; }
    double volume(const Solid&) const override { return 0; }
    double surface_area(const Solid&) const override { return 0; }
    Point3 centre_of_mass(const Solid&) const override { return {}; }
    Bounds bounds(const Solid&) const override { return {}; }
    double overlap(const PlacedSolid&, const PlacedSolid&) const override { return 0; }
    SolidRef within(const SolidRef& solid, const Bounds&) const override {
        ++asked;
        return solid;
    }
    std::vector<ViewLine> view(const std::vector<PlacedSolid>& solids, const View&, bool) const override {
        ++asked;
        return std::vector<ViewLine>(solids.size());
    }
    std::vector<Triangle> triangles(const Solid&, double) const override {
        ++asked;
        return std::vector<Triangle>(1);
    }

    mutable int asked = 0;
};

}  // namespace

TEST_SUITE("unit/solid") {
    TEST_CASE("what has been asked before is not asked again") {
        const SolidRef bar = build(kind_of(100, 40, 20));
        const CountingKernel counting;
        const auto kernel = remembering(counting);
        for (int i = 0; i < 2; ++i) {
            CHECK(kernel->view({{bar, {}, 1}, {bar, {}, 2}}, View{}, true).size() == 2);
            CHECK(kernel->triangles(*bar, 0.1).size() == 1);
            CHECK(kernel->within(bar, {{0, 0, 0}, {1, 1, 1}}) == bar);
        }
        CHECK(counting.asked == 3);
    }

    TEST_CASE("another solid, place, tag, side, box or tolerance is another question") {
        const SolidRef bar = build(kind_of(100, 40, 20));
        const SolidRef other = build(kind_of(100, 40, 20));
        const CountingKernel counting;
        const auto kernel = remembering(counting);
        Pose moved;
        moved.move = {0, 0, 1};
        kernel->view({{bar, {}, 1}}, View{}, true);
        kernel->view({{other, {}, 1}}, View{}, true);
        kernel->view({{bar, moved, 1}}, View{}, true);
        kernel->view({{bar, {}, 2}}, View{}, true);
        kernel->view({{bar, {}, 1}}, View{}, false);
        kernel->view({{bar, {}, 1}}, View{{0, 0, 1}, {0, 1, 0}}, true);
        CHECK(counting.asked == 6);
        kernel->triangles(*bar, 0.1);
        kernel->triangles(*other, 0.1);
        kernel->triangles(*bar, 0.2);
        CHECK(counting.asked == 9);
        kernel->within(bar, {{0, 0, 0}, {1, 1, 1}});
        kernel->within(other, {{0, 0, 0}, {1, 1, 1}});
        kernel->within(bar, {{0, 0, 0}, {1, 1, 2}});
        CHECK(counting.asked == 12);
    }
}
