// Pockets, the walls beside them, and rays through wood.
#include "compiler/check/fit/pockets.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "compiler/assembly/placed_meshes.hpp"
#include "compiler/assembly/shared_wood.hpp"
#include "compiler/check/fit/rays.hpp"
#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

const std::string shapes = R"(
shape pocket(target: face) {
    along = 40mm
    across = 20mm
    deep = 10mm
    shift = 0mm
    remove target box(across, along, deep) at (0, shift)
}
)";

// A block of 200 x 60 x 40 mm with these shapes on it.
struct Block {
    CompiledDesign design;
    Diagnostics diagnostics;
    SolidStore solids{design.piece(), diagnostics};
    std::vector<Mesh> meshes = placed_meshes(design.piece(), solids);
    std::vector<Pocket> pockets = pockets_of(design.piece(), design.piece().parts.front());
    std::vector<Wall> walls = walls_of(pockets, meshes.front());

    explicit Block(const std::string& work)
        : design(compile_files(
              {{"a.rod", shapes + "piece \"Block\" { unit mm; wide = 200mm; deep = 60mm; tall = 40mm\n" +
                             stick("block", "wide", {0, 0, 0}, {200, 60, 40}, work) + "}\n"}},
              "a.rod")) {}

    const Wall& wall(std::size_t pocket, Face side) const {
        const auto found = std::ranges::find_if(
            walls, [&](const Wall& each) { return each.pocket == &pockets[pocket] && each.side == side; });
        REQUIRE(found != walls.end());
        return *found;
    }
};

}  // namespace

TEST_SUITE("unit/check") {
    TEST_CASE("rays measure the wood ahead, and are empty outside of it") {
        const Block block("pocket on top face");
        const auto ahead = [&](const Point3& from, Direction way) {
            return Rays(block.meshes.front(), way, {from, from}).wood_ahead(from);
        };
        CHECK(ahead({10.3, 10.1, 10.7}, {Axis::wide, true}).value() == doctest::Approx(189.7));
        CHECK(ahead({10.3, 10.1, 10.7}, {Axis::wide, false}).value() == doctest::Approx(10.3));
        // Up to the pocket's bottom at 30.
        CHECK(ahead({100.3, 30.1, 10.7}, {Axis::tall, true}).value() == doctest::Approx(19.3));
        CHECK_FALSE(ahead({100.3, 30.1, 35.7}, {Axis::tall, true}));
        CHECK_FALSE(ahead({-5.3, 30.1, 10.7}, {Axis::wide, true}));
        // The middle of a rectangle is on the edge of its two triangles, whichever way it is divided.
        CHECK(ahead({10.3, 30, 20}, {Axis::wide, false}).value() == doctest::Approx(10.3));
        CHECK(ahead({10.3, 30, 20}, {Axis::wide, true}).value() == doctest::Approx(189.7));
    }

    TEST_CASE("a pocket is open where it comes out, and has a wall to every other side") {
        const Block block("pocket on top face");
        REQUIRE(block.pockets.size() == 1);
        CHECK(block.pockets[0].entry == Face::top);
        CHECK(block.walls.size() == 5);
        CHECK(block.wall(0, Face::bottom).thick == doctest::Approx(30).epsilon(0.001));
        CHECK(block.wall(0, Face::left).thick == doctest::Approx(80).epsilon(0.001));
        CHECK(block.wall(0, Face::front).thick == doctest::Approx(20).epsilon(0.001));
    }

    TEST_CASE("a pocket from another side is what comes next, also where there is nothing between") {
        const Block near("pocket(deep = 15mm) on top face; pocket(deep = 20mm) on bottom face");
        REQUIRE(near.pockets.size() == 2);
        CHECK(near.wall(0, Face::bottom).thick == doctest::Approx(5).epsilon(0.01));
        CHECK(near.wall(0, Face::bottom).beyond == &near.pockets[1]);
        const Block meeting("pocket(deep = 25mm) on top face; pocket(deep = 20mm) on bottom face");
        CHECK(meeting.wall(0, Face::bottom).thick == 0);
        CHECK(meeting.wall(0, Face::bottom).beyond == &meeting.pockets[1]);
    }

    TEST_CASE("pockets from one side may run into each other") {
        const Block crossing(
            "pocket(along = 100mm, across = 10mm) on top face; pocket(along = 10mm, across = 50mm) on "
            "top face");
        for (const Wall& wall : crossing.walls) CHECK(wall.thick > 4);
    }

    TEST_CASE("where a shape took the wood away a pocket comes out") {
        const Block tapered(
            "pocket(deep = 30mm, shift = 70mm) on top face; taper(to = 20mm, thin_end = top) on bottom "
            "face");
        CHECK(tapered.wall(0, Face::bottom).thick == 0);
        CHECK(tapered.wall(0, Face::bottom).beyond == nullptr);
    }

    TEST_CASE("boxes that are near are found whatever their order") {
        const auto cube = [](double at) {
            const Triangle flat{{Point3{at, 0, 0}, Point3{at + 10, 10, 0}, Point3{at, 0, 10}}, {}, 0};
            return Mesh{flat};
        };
        using Pairs = std::vector<std::pair<std::size_t, std::size_t>>;
        const std::vector<Mesh> row = {cube(40), cube(0), cube(20), cube(11), {}};
        // From 11 to 21 and from 20 to 30: they overlap by 1.
        CHECK(near_pairs(row, 0) == Pairs{{2, 3}});
        CHECK(near_pairs(row, -1.5).empty());
        CHECK(near_pairs(row, 1.5) == Pairs{{1, 3}, {2, 3}});
        CHECK(near_pairs(row, 10.5) == Pairs{{0, 2}, {1, 2}, {1, 3}, {2, 3}});
    }
}
