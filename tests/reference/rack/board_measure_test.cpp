#include <doctest/doctest.h>

#include "compiler/quantity/quantity.hpp"
#include "compiler/stock/rack/board_foot.hpp"

using namespace rodwright;

namespace {

RackBoard surfaced_board(const Rational& thickness) {
    RackBoard board;
    board.surfaced = true;
    board.thickness = thickness;
    board.width = board.far_width = inches(6);
    board.length = inches(96);
    return board;
}

}  // namespace

TEST_SUITE("reference/rack") {
    TEST_CASE("a board foot") {
        // Lumber-trade glossaries quoting NHLA practice: 144 cubic inches, 1 in x 12 in x 12 in.
        CHECK(board_feet(inches(1), inches(12), inches(12)) == 1);
        // The same: BF = T(in) x W(in) x L(ft) / 12. 2 in nominal x 7 in x 9 ft: 126/12 = 10.5.
        CHECK(board_feet(inches(2), inches(7), inches(9 * 12)) == ratio(21, 2));
        // 144 x 16.387064 cm^3 (the cubic inch of NIST SP 811, Appendix B.8) = 2359.737 cm^3, so that a cubic
        // metre is 423.776 board feet.
        const Rational cubic_metre = board_feet(1000, 1000, 1000);
        CHECK(abs(1'000'000 / cubic_metre - ratio(2'359'737, 1000)) < ratio(1, 1000));
        CHECK(abs(cubic_metre - ratio(423'776, 1000)) < ratio(1, 1000));
    }

    TEST_CASE("thickness under 1 in counts as 1 in") {
        // NHLA hardwood tally, restated by a hardwood terminology page (goodwoodcorp.com), and Griffith,
        // Advanced Projects in Woodwork, instructions for the bill of material. 3/4 in x 6 in x 8 ft: 6 x 8 /
        // 12 = 4.
        CHECK(board_feet(inches(3, 4), inches(6), inches(96)) == 4);
        CHECK(board_feet(inches(1), inches(6), inches(96)) == 4);
        // 5/4: 5/4 x 6 x 8 / 12 = 5.
        CHECK(board_feet(inches(5, 4), inches(6), inches(96)) == 5);
    }

    TEST_CASE("surface measure of grades is board feet of 4/4") {
        // NHLA: SM = W(in) x L(ft) / 12 in square feet. FAS boards of 6 in x 8 ft have SM 4, 12 in x 12 ft SM
        // 12 (National Hardwood Lumber Association rules, agreeing copies); 4/4 stock has as many board feet.
        CHECK(board_feet(inches(1), inches(6), inches(96)) == 4);
        CHECK(board_feet(inches(1), inches(12), inches(144)) == 12);
    }

    TEST_CASE("surfaced stock is billed at its rough thickness") {
        // NHLA standard thickness of surfaced lumber (S2S), two restating pages that agree
        // (engineeringtoolbox.com, "Hardwood lumber - dimensions", and a second one).
        CHECK(rough_thickness(inches(3, 16)) == inches(3, 8));
        CHECK(rough_thickness(inches(5, 16)) == inches(1, 2));
        CHECK(rough_thickness(inches(7, 16)) == inches(5, 8));
        CHECK(rough_thickness(inches(9, 16)) == inches(3, 4));
        CHECK(rough_thickness(inches(13, 16)) == inches(1));
        CHECK(rough_thickness(inches(17, 16)) == inches(5, 4));
        CHECK(rough_thickness(inches(21, 16)) == inches(3, 2));
        CHECK(rough_thickness(inches(3, 2)) == inches(7, 4));
        CHECK(rough_thickness(inches(7, 4)) == inches(2));
        CHECK(rough_thickness(inches(11, 4)) == inches(3));
        CHECK(rough_thickness(inches(13, 4)) == inches(7, 2));
        CHECK(rough_thickness(inches(15, 4)) == inches(4));
        // From memory, not found in print: 10/4 to 2-1/4 in.
        CHECK(rough_thickness(inches(9, 4)) == inches(5, 2));
        // Common practice, no source: 3/4 in boards are sold as 4/4, 1 in as 5/4.
        CHECK(rough_thickness(inches(3, 4)) == inches(1));
        CHECK(rough_thickness(inches(1)) == inches(5, 4));
        // By the two rules: 6 in x 8 ft at 13/16 in is 4 board feet, at 1-1/16 in 5.
        CHECK(board_feet(surfaced_board(inches(13, 16))) == 4);
        CHECK(board_feet(surfaced_board(inches(17, 16))) == 5);
    }

    TEST_CASE("what is added on top of the net") {
        // Trade writing: buy = net x (1 + a). 30 % on top of 100 is 23.08 % waste of what is bought.
        CHECK(with_allowance(100, ratio(30, 100)) == 130);
        const Rational waste = 1 - 100 / with_allowance(100, ratio(30, 100));
        CHECK(abs(waste - ratio(2308, 10'000)) < ratio(1, 10'000));
        // NHLA clear yields: FAS 83-1/3 %, so 20 % more for defects alone; No. 1 Common 66-2/3 %, 50 % more.
        CHECK(with_allowance(ratio(250, 3), ratio(20, 100)) == 100);
        CHECK(with_allowance(ratio(200, 3), ratio(50, 100)) == 100);
    }
}
