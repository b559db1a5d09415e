// Guide-bush arithmetic: offset (G - B) / 2 from the geometry of two circles with one centre, the worked
// cases as the trade tells them (restated in a collection of shop practice; the cavity's from a forum).
#include "compiler/workplan/operations/guide_bush.hpp"

#include <doctest/doctest.h>

#include "compiler/workplan/work_data.hpp"

using namespace rodwright;

TEST_SUITE("reference/drawing") {
    TEST_CASE("a cavity 8 x 4 in, bush 3/4, bit 1/4: the opening is 8 1/2 x 4 1/2") {
        CHECK(opening_for(inches(8), inches(3, 4), inches(1, 4)) == inches(17, 2));
        CHECK(opening_for(inches(4), inches(3, 4), inches(1, 4)) == inches(9, 2));
    }

    TEST_CASE("offsets of common pairs") {
        CHECK(bush_offset(inches(1), inches(1, 2)) == inches(1, 4));
        CHECK(bush_offset(inches(3, 4), inches(1, 4)) == inches(1, 4));
        CHECK(bush_offset(inches(1, 2), inches(1, 4)) == inches(1, 8));
        CHECK(bush_offset(inches(5, 8), inches(1, 2)) == inches(1, 16));
        CHECK(bush_offset(inches(5, 16), inches(1, 4)) == inches(1, 32));
        CHECK(bush_offset(inches(7, 16), inches(1, 4)) == inches(3, 32));
        CHECK(bush_offset(inches(3, 4), inches(1, 2)) == inches(1, 8));
    }

    TEST_CASE("an inlay with bit 1/4, small bush 1/2: the large bush is 1 in") {
        // Through one opening the small bush leaves the inlay's edge (G + B) / 2 from the template's, the
        // large one cuts the pocket's edge (G - B) / 2 from it: the same where it is larger by two bits.
        const Rational inlay_edge = (inches(1, 2) + inches(1, 4)) / 2;
        CHECK(bush_offset(inches(1), inches(1, 4)) == inlay_edge);
    }

    TEST_CASE("the smallest bush that is at least 1/8 in larger than the bit") {
        // Common sizes, from memory: 5/16, 3/8, 7/16, 1/2, 5/8, 3/4, 1 in; 16, 17, 20, 24, 27, 30, 40 mm.
        const Shop& shop = embedded_work_data().shop;
        CHECK(bush_for(shop, inches(1, 4), LengthUnit::inch) == inches(3, 8));
        CHECK(bush_for(shop, inches(1, 2), LengthUnit::inch) == inches(5, 8));
        CHECK(bush_for(shop, inches(3, 8), LengthUnit::inch) == inches(1, 2));
        CHECK(bush_for(shop, inches(1, 8), LengthUnit::inch) == inches(5, 16));
        CHECK(bush_for(shop, 6, LengthUnit::millimetre) == Rational(16));
        CHECK(bush_for(shop, 18, LengthUnit::millimetre) == Rational(24));  // 21.175 or more
        CHECK(!bush_for(shop, inches(1), LengthUnit::inch));                // none of 1 1/8
    }
}
