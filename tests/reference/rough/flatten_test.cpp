// What warp takes from boards, and what sawing takes. Geometry stands beside each value; shop figures name
// their source in stdlib/data/milling.yaml.
#include "compiler/stock/rough/flatten.hpp"

#include <doctest/doctest.h>

#include <cmath>

#include "compiler/quantity/quantity.hpp"
#include "tests/unit/rough/library_milling.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// The rise of an arc of that radius over a chord: computed from the circle itself.
double rise_of(double radius, double chord) {
    return radius - std::sqrt(radius * radius - chord * chord / 4);
}

}  // namespace

TEST_SUITE("reference/rough") {
    // Source: geometry of the circle. s = c^2 / (8 R) for small s; 1/4 in over 96 in leaves 1/16 in over 48
    // in.
    TEST_CASE("a bow of 1/4 in over 8 ft leaves 1/16 in in each half") {
        const Warp board{inches(1, 4), 0, 0};
        CHECK(warp_of_piece(board, ratio(1, 2), 1).bow == inches(1, 16));
        const double radius = 96 * 96 / (8 * 0.25) + 0.125;
        CHECK(rise_of(radius, 96) == doctest::Approx(0.25));
        CHECK(rise_of(radius, 48) == doctest::Approx(1.0 / 16).epsilon(1e-3));
    }

    // Source: geometry of the circle. Ripped in three: a ninth of 3/8 in.
    TEST_CASE("a cup of 3/8 in over 9 in leaves 1/24 in in each third") {
        const Warp board{0, inches(3, 8), 0};
        CHECK(warp_of_piece(board, 1, ratio(1, 3)).cup == inches(1, 24));
        CHECK(warp_of_piece(board, ratio(1, 3), 1).cup == inches(3, 8));
    }

    // Source: geometry, the corner of z = a x y: half the length and a third of the width leave a sixth.
    TEST_CASE("twist goes with the area") {
        CHECK(warp_of_piece({0, 0, 6}, ratio(1, 2), ratio(1, 3)).twist == 1);
    }

    // Source: the sum 1 - 3/4 - 1/16; clean-up of 1/16 in is common practice, no source.
    TEST_CASE("4/4 for 3/4 in has 3/16 in for warp, and a cup of 5/16 in is ripped in two") {
        const MillingData milling = library_milling();
        const Rational rough = milling.find_class("4/4")->rough;
        const Rational room = rough - thickness_needed(inches(3, 4), {}, false, milling);
        CHECK(room == inches(3, 16));
        CHECK(pieces_to_flatten(inches(5, 16), room) == 2);
        const Warp half = warp_of_piece({0, inches(5, 16), 0}, 1, ratio(1, 2));
        CHECK(half.cup == inches(5, 64));
        CHECK(thickness_needed(inches(3, 4), half, false, milling) <= rough);
        CHECK(thickness_needed(inches(3, 4), {0, inches(5, 16), 0}, false, milling) > rough);
    }

    // Source: geometry of a bilinear surface, whose best plane lies within a quarter of the twist each way.
    TEST_CASE("a corner that stands up 1/4 in leaves 7/8 of 1 in") {
        const Warp twisted{0, 0, inches(1, 4)};
        CHECK(Rational(inches(1) - warp_loss(twisted)) == inches(7, 8));
        // The corners of z = t u v over the unit square, off the plane t (2u + 2v - 1) / 4.
        const auto off = [](double u, double v) { return 0.25 * (u * v - (2 * u + 2 * v - 1) / 4); };
        CHECK(off(0, 0) - off(1, 0) == doctest::Approx(0.125));
        CHECK(off(1, 1) - off(0, 1) == doctest::Approx(0.125));
    }

    // Source: the sum; bow, cup and half the twist add.
    TEST_CASE("all three kinds of warp at once") {
        const MillingData milling = library_milling();
        const Warp warp{inches(1, 16), inches(1, 32), inches(1, 16)};
        CHECK(warp_loss(warp) == inches(1, 8));
        CHECK(thickness_needed(inches(3, 4), warp, false, milling) == inches(15, 16));
        CHECK(thickness_needed(inches(3, 4), warp, true, milling) == inches(15, 16));
        CHECK(thickness_needed(inches(3, 4), {}, true, milling) == inches(3, 4));
    }

    TEST_CASE("how often to cut, at its limits") {
        CHECK(pieces_to_flatten(0, 1) == 1);
        CHECK(pieces_to_flatten(9, 1) == 3);
        CHECK(pieces_to_flatten(ratio(901, 100), 1) == 4);
        CHECK(pieces_to_flatten(10'000, 1) == 100);
        CHECK_FALSE(pieces_to_flatten(10'001, 1));
        CHECK_FALSE(pieces_to_flatten(1, 0));
        CHECK_FALSE(pieces_to_flatten(1, -1));
    }

    // Source: n = floor((T + k) / (t + c + k)), from n leaves with n - 1 kerfs between; k = 1/16, c = 2 x
    // 1/16.
    TEST_CASE("leaves from a resawn board") {
        const MillingData milling = library_milling();
        const auto leaves = [&](const Rational& rough, const Rational& leaf) {
            return resawn_leaves(rough, leaf, milling);
        };
        CHECK(leaves(inches(1), inches(5, 16)) == 2);      // 17/16 over 8/16: 2.125
        CHECK(leaves(inches(1), inches(3, 8)) == 1);       // 17/16 over 9/16: 1.89
        CHECK(leaves(inches(1), inches(1, 8)) == 3);       // 17/16 over 5/16: 3.4
        CHECK(leaves(inches(2), inches(3, 4)) == 2);       // 33/16 over 15/16: 2.2
        CHECK(leaves(inches(2), inches(3, 8)) == 3);       // 33/16 over 9/16: 3.67
        CHECK(leaves(inches(5, 4), inches(15, 32)) == 2);  // 42/32 over 21/32: 2 and nothing left
        CHECK(leaves(inches(5, 4), inches(31, 64)) == 1);
        CHECK(leaves(inches(1), inches(1)) == 0);
        CHECK(leaves(inches(1'000'000), inches(1)) == 1000);
    }

    // Source: the sum 6 x 10 + 6 x 1/8; n parts with both ends to trim take n + 1 cuts, with one ready end n.
    TEST_CASE("six parts of 10 in take 60 3/4 in of a board with one square end") {
        CHECK(length_with_kerfs(inches(10), 6, 1, inches(1, 8)) == inches(243, 4));
        CHECK(length_with_kerfs(inches(10), 6, 0, inches(1, 8)) == inches(487, 8));
        CHECK(length_with_kerfs(inches(10), 6, 2, inches(1, 8)) == inches(485, 8));
    }
}
