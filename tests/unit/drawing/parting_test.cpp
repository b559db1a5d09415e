#include "backends/packet/joints/parting.hpp"

#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;
using doctest::Approx;

static std::size_t part_of(const Piece& piece, const std::string& name) {
    for (std::size_t i = 0; i < piece.parts.size(); ++i) {
        if (piece.parts[i].name == name) return i;
    }
    FAIL("no part " << name);
    return 0;
}

TEST_SUITE("unit/drawing") {
    // Two posts with a rail between: the rail stays, each post goes out by gap and tenon.
    TEST_CASE("posts leave a rail along its tenons, by as much on either side") {
        const auto design = compile_body(
            "wood oak = white_oak\n" + stick("left_post of oak", "tall", {0, 0, 0}, {60, 60, 400}) +
            stick("right_post of oak", "tall", {360, 0, 0}, {60, 60, 400}) +
            stick("rail of oak", "wide", {60, 20, 200}, {300, 20, 80}) +
            "join rail.left to left_post with mortise_and_tenon(long = 40mm)\n"
            "join rail.right to right_post with mortise_and_tenon(long = 40mm)\n"
            "part loose of oak { grain wide; left = 0mm; wide = 50mm; front = 500mm; deep = 20mm; bottom = "
            "0mm; "
            "tall = 20mm }\n");
        const Piece& piece = design.piece();
        const auto moves = packet::parting(piece, 100);
        CHECK(moves[part_of(piece, "rail")][0] == Approx(0).epsilon(1e-3));
        CHECK(moves[part_of(piece, "left_post")][0] == Approx(-140).epsilon(1e-3));
        CHECK(moves[part_of(piece, "right_post")][0] == Approx(140).epsilon(1e-3));
        for (const std::size_t axis : {1U, 2U})
            CHECK(std::abs(moves[part_of(piece, "left_post")][axis]) < 1e-3);
        for (const double move : moves[part_of(piece, "loose")]) CHECK(std::abs(move) < 1e-9);
    }
}
