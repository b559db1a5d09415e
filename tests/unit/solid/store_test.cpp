#include <doctest/doctest.h>

#include "compiler/solid/kernel_module.hpp"
#include "tests/unit/solid/pieces.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE("unit/solid") {
    TEST_CASE("a pose turns and then moves, as the placement does") {
        // The piece's wide is the kind's tall, deep the kind's wide reversed, tall the kind's deep.
        const Placement placement{Turn{{plus_z, minus_x, plus_y}}, vector_of(100, 200, 300)};
        const Pose pose = pose_of(placement);
        CHECK(pose.columns[0] == Point3{0, -1, 0});
        CHECK(pose.columns[1] == Point3{0, 0, 1});
        CHECK(pose.columns[2] == Point3{1, 0, 0});
        CHECK(pose.move == Point3{100, 200, 300});
    }

    TEST_CASE("a store builds a kind once and places every part with its own index") {
        Piece piece;
        piece.kinds = {kind_of(100, 40, 20), kind_of(50, 50, 50)};
        for (const std::uint32_t kind : {0U, 1U, 0U}) {
            Part part;
            part.kind = KindId{kind};
            piece.parts.push_back(part);
        }
        piece.parts[2].placement.move = vector_of(0, 0, 500);
        Diagnostics diagnostics;
        SolidStore store(piece, diagnostics);
        const std::vector<PlacedSolid> placed = store.placed();
        REQUIRE(placed.size() == 3);
        CHECK(placed[0].solid == placed[2].solid);
        CHECK(placed[0].solid != placed[1].solid);
        CHECK(placed[2].pose.move[2] == 500);
        CHECK(placed[2].tag == 2);
        CHECK(store.solid(KindId{1}) == placed[1].solid);
        CHECK(store.solid(KindId::none) == nullptr);
    }

    TEST_CASE("a kind that cannot be built is reported once and its parts are left out") {
        Piece piece;
        piece.kinds = {kind_of(0, 40, 20)};
        piece.parts.resize(2);
        for (Part& part : piece.parts) part.kind = KindId{0};
        Diagnostics diagnostics;
        SolidStore store(piece, diagnostics);
        CHECK(store.placed().empty());
        CHECK(store.solid(KindId{0}) == nullptr);
        CHECK(diagnostics.list().size() == 1);
        CHECK(diagnostics.list().front().code == Code::solid_failed);
    }

    TEST_CASE("a module that is missing or is something else says so") {
        std::string error;
        CHECK(open_kernel_module(kernel_module_path() + ".none", error) == nullptr);
        CHECK(error.find("rodwright_solid.so.none") != std::string::npos);
        error.clear();
        CHECK(open_kernel_module("libm.so.6", error) == nullptr);
        CHECK(error == "libm.so.6 is not a solid kernel");
    }
}
