#include "compiler/stock/rack/offcut.hpp"

#include <doctest/doctest.h>

#include "compiler/quantity/quantity.hpp"

using namespace rodwright;

namespace {

const Rational step = inches(1, 64);

// 96 in by 8 in.
RackBoard plain_board() {
    RackBoard board;
    board.name = "A1";
    board.species = "cherry";
    board.cut = "rift";
    board.surfaced = true;
    board.thickness = inches(13, 16);
    board.length = inches(96);
    board.width = board.far_width = inches(8);
    board.moisture = 8;
    board.price = 40;
    board.note = "behind the door";
    return board;
}

RackChange::Left left(const Rational& from_end, const Rational& from_edge, const Rational& length,
                      const Rational& width) {
    return {"A1", from_end, from_edge, length, width};
}

}  // namespace

TEST_SUITE("unit/rack") {
    TEST_CASE("an offcut keeps what its board was, but not its price and its note") {
        const RackBoard offcut = offcut_of(plain_board(), left(0, 0, inches(30), inches(8)), step);
        CHECK(offcut.name == "");
        CHECK(offcut.from == "A1");
        CHECK(offcut.offcut);
        CHECK(offcut.species == "cherry");
        CHECK(offcut.cut == "rift");
        CHECK(offcut.surfaced);
        CHECK(offcut.thickness == inches(13, 16));
        CHECK(offcut.length == inches(30));
        CHECK(offcut.width == inches(8));
        CHECK(offcut.far_width == inches(8));
        CHECK(offcut.moisture == Rational(8));
        CHECK(offcut.count == 1);
        CHECK_FALSE(offcut.price);
        CHECK(offcut.note == "");
    }

    TEST_CASE("end checks stay where they are") {
        RackBoard board = plain_board();
        board.checks = inches(2);
        board.far_checks = inches(3);
        const auto checks = [&](const Rational& from_end, const Rational& length) {
            const RackBoard offcut = offcut_of(board, left(from_end, 0, length, inches(8)), step);
            return std::pair(offcut.checks, offcut.far_checks);
        };
        CHECK(checks(0, inches(96)) == std::pair(inches(2), inches(3)));
        CHECK(checks(0, inches(48)) == std::pair(inches(2), Rational(0)));
        CHECK(checks(inches(1, 2), inches(48)) == std::pair(inches(3, 2), Rational(0)));
        CHECK(checks(inches(2), inches(48)) == std::pair(Rational(0), Rational(0)));
        CHECK(checks(inches(48), inches(48)) == std::pair(Rational(0), inches(3)));
        CHECK(checks(inches(48), inches(46)) == std::pair(Rational(0), inches(1)));
    }

    TEST_CASE("sapwood stays along the far edge, as wide as it gets where the board tapers") {
        RackBoard board = plain_board();
        board.sapwood = inches(1);
        const auto sapwood = [&](const RackChange::Left& rest) {
            return offcut_of(board, rest, step).sapwood;
        };
        CHECK(sapwood(left(0, 0, inches(20), inches(8))) == inches(1));
        CHECK(sapwood(left(0, inches(2), inches(20), inches(11, 2))) == inches(1, 2));
        CHECK(sapwood(left(0, 0, inches(20), inches(7))) == 0);
        CHECK(sapwood(left(0, inches(15, 2), inches(20), inches(1, 2))) == inches(1, 2));
        // 8 in to 5 in over 96 in: at 32 in the board is 7 in wide, heartwood 6 in.
        board.far_width = inches(5);
        CHECK(sapwood(left(0, 0, inches(32), inches(13, 2))) == inches(1, 2));
        // At 33 in it is 1/32 in narrower.
        CHECK(sapwood(left(0, 0, inches(33), inches(13, 2))) == inches(17, 32));
        // At 32.1 in 1/320 in narrower, which is less than 1/64 in.
        CHECK(sapwood(left(0, 0, inches(321, 10), inches(13, 2))) == inches(33, 64));
        CHECK(sapwood(left(0, 0, inches(32), inches(6))) == 0);
    }

    TEST_CASE("defects are measured from the offcut's own corner, and cut where it ends") {
        RackBoard board = plain_board();
        board.defects = {{inches(20), inches(2), inches(4), inches(1), "knot"},
                         {inches(60), inches(7), inches(2), inches(1), "stain"}};
        const auto defects = [&](const RackChange::Left& rest) {
            return offcut_of(board, rest, step).defects;
        };
        const auto all = defects(left(inches(10), inches(1), inches(60), inches(7)));
        REQUIRE(all.size() == 2);
        CHECK(all[0].from_end == inches(10));
        CHECK(all[0].from_edge == inches(1));
        CHECK(all[0].length == inches(4));
        CHECK(all[0].width == inches(1));
        CHECK(all[0].note == "knot");
        CHECK(all[1].from_end == inches(50));
        CHECK(all[1].from_edge == inches(6));
        const auto part = defects(left(inches(21), inches(5, 2), inches(2), inches(5)));
        REQUIRE(part.size() == 1);
        CHECK(part[0].from_end == 0);
        CHECK(part[0].from_edge == 0);
        CHECK(part[0].length == inches(2));
        CHECK(part[0].width == inches(1, 2));
        // Side by side is not in it.
        CHECK(defects(left(inches(24), 0, inches(36), inches(8))).empty());
        CHECK(defects(left(0, inches(3), inches(96), inches(4))).empty());
    }

    TEST_CASE("bow and cup shrink with the square of what is left, twist with both sides") {
        RackBoard board = plain_board();
        board.warp = {inches(1, 2), inches(1, 4), inches(1, 2)};
        const Warp half = offcut_of(board, left(0, 0, inches(48), inches(4)), step).warp;
        CHECK(half.bow == inches(1, 8));
        CHECK(half.cup == inches(1, 16));
        CHECK(half.twist == inches(1, 8));
        // A third: 1/18 in of bow, between 3/64 and 4/64.
        CHECK(offcut_of(board, left(0, 0, inches(32), inches(8)), step).warp.bow == inches(1, 16));
        CHECK(offcut_of(board, left(0, 0, inches(96), inches(8)), step).warp.bow == inches(1, 2));
        // Never more than the board had.
        board.warp.bow = ratio(1, 10);
        CHECK(offcut_of(board, left(0, 0, inches(95), inches(8)), ratio(1, 2)).warp.bow == ratio(1, 10));
    }

    TEST_CASE("a sheet's offcut is trimmed where a factory edge is left on it") {
        RackSheet sheet;
        sheet.name = "P1";
        sheet.species = "mdf";
        sheet.thickness = 18;
        sheet.length = 2440;
        sheet.width = 1220;
        sheet.grain = FaceGrain::along_width;
        sheet.trim = 10;
        sheet.defects = {{0, 0, 300, 300, "dented"}};
        const RackSheet inside = offcut_of(sheet, {"P1", 10, 610, 2420, 600});
        CHECK(inside.trim == 0);
        CHECK(inside.grain == FaceGrain::along_width);
        CHECK(inside.offcut);
        CHECK(inside.from == "P1");
        CHECK(inside.defects.empty());
        CHECK(offcut_of(sheet, {"P1", 0, 610, 600, 600}).trim == 10);
        CHECK(offcut_of(sheet, {"P1", 10, 9, 600, 600}).trim == 10);
        CHECK(offcut_of(sheet, {"P1", 10, 611, 600, 600}).trim == 10);
        CHECK(offcut_of(sheet, {"P1", 1831, 10, 600, 600}).trim == 10);
        CHECK(offcut_of(sheet, {"P1", 10, 10, 600, 600}).defects.at(0).length == 290);
    }
}
