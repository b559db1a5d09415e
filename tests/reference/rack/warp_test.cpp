// How bow, cup and twist of what is left of a board follow from those of the board.
#include <doctest/doctest.h>

#include "compiler/quantity/quantity.hpp"
#include "compiler/stock/rack/offcut.hpp"

using namespace rodwright;

TEST_SUITE("reference/rack") {
    TEST_CASE("bow and cup of a part of a board") {
        // Geometry: an arc's rise is s = c^2/(8R), so each of n equal lengths of it keeps s/n^2. A bow of 1/4
        // in over 8 ft, cut in 2: 1/16 in each.
        RackBoard board;
        board.length = inches(96);
        board.width = board.far_width = inches(9);
        board.warp = {inches(1, 4), inches(3, 8), 0};
        const Rational fine = ratio(1, 1'000'000);
        const Warp half = offcut_of(board, {"", 0, 0, inches(48), inches(9)}, fine).warp;
        CHECK(abs(half.bow - inches(1, 16)) <= fine);
        // A cup of 3/8 in over 9 in, ripped in 3: 1/24 in each.
        const Warp third = offcut_of(board, {"", 0, 0, inches(96), inches(3)}, fine).warp;
        CHECK(abs(third.cup - inches(1, 24)) <= fine);
    }

    TEST_CASE("twist of a part of a board") {
        // Geometry: with three corners down a twisted face is z = t (x/L)(y/W), so a part of the length and
        // of the width keeps the product of its shares. t = 1/4 in: half the length 1/8 in, a quarter of both
        // 1/64 in.
        RackBoard board;
        board.length = inches(80);
        board.width = board.far_width = inches(8);
        board.warp = {0, 0, inches(1, 4)};
        const Rational fine = ratio(1, 1'000'000);
        CHECK(abs(offcut_of(board, {"", 0, 0, inches(40), inches(8)}, fine).warp.twist - inches(1, 8)) <=
              fine);
        CHECK(abs(offcut_of(board, {"", 0, 0, inches(20), inches(2)}, fine).warp.twist - inches(1, 64)) <=
              fine);
    }
}
