#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

// Equal spacing, by formulas of the trade (common practice, no source): n slats of width w in an opening S
// with the gap g also at both ends have g = (S - n w) / (n + 1), with half gaps there g = (S - n w) / n, with
// none g = (S - n w) / (n - 1); with ends e of their own g = (S - n w - 2 e) / (n - 1). For gaps of at most G
// the count is the whole number at or above (S - G) / (w + G). All numbers here are worked out on paper.
TEST_SUITE_BEGIN("reference/rows");

namespace {

CompiledDesign row(const std::string& count, const std::string& size, const std::string& span,
                   const std::string& lines) {
    return compile_text(
        "piece \"Row\" { wide = 200\"; deep = 200\"; tall = 40\"\npart slat[" + count +
        "] { grain tall; wide = " + size +
        "; front = 0; deep = 1/2\"; bottom = 0; tall = 30\" }\nspace slat along wide from piece.left "
        "to piece.left + " +
        span + " { " + lines + " }\n}\n");
}

Rational left(const CompiledDesign& design, int number) {
    return design.at("slat[" + std::to_string(number) + "]", Face::left);
}

Rational gap(const CompiledDesign& design) {
    return left(design, 2) - design.at("slat[1]", Face::right);
}

}  // namespace

TEST_CASE("2 in slats 1/2 in apart with 1/4 in ends") {
    // 5 slats: 10 + 4 x 1/2 + 2 x 1/4 = 12-1/2.
    const CompiledDesign five = row("5", "2\"", "12-1/2\"", "ends = 1/4\"");
    CHECK(gap(five) == inches(1, 2));
    CHECK(left(five, 1) == inches(1, 4));
    CHECK(left(five, 2) == inches(11, 4));
    CHECK(left(five, 3) == inches(21, 4));
    CHECK(left(five, 5) == inches(41, 4));
    CHECK(five.at("slat[5]", Face::right) == inches(49, 4));
    // 12 slats: 24 + 11 x 1/2 + 1/2 = 30.
    const CompiledDesign twelve = row("fit", "2\"", "30\"", "gap = 1/2\"; ends = 1/4\"");
    REQUIRE(twelve.piece().parts.size() == 12);
    CHECK(gap(twelve) == inches(1, 2));
    CHECK(left(twelve, 12) == inches(111, 4));
}

TEST_CASE("a seat 18 in deep: seven slats of 2 in, the gap comes out at 7/12 in") {
    // 18 - 14 - 2 x 1/4 = 3-1/2 over 6 gaps.
    const CompiledDesign design = row("7", "2\"", "18\"", "ends = 1/4\"");
    CHECK(gap(design) == inches(7, 12));
    // 1/4 + 3 x 31/12 = 8: the middle slat stands from 8 to 10, in the middle of 18.
    CHECK(left(design, 4) == inches(8));
    // As many as fit 1/2 in apart: (18 - 1/2 + 1/2) / 2-1/2 = 7.2, seven.
    CHECK(row("fit", "2\"", "18\"", "gap = 1/2\"; ends = 1/4\"").piece().parts.size() == 7);
}

TEST_CASE("gaps at the ends as wide as between: 22 slats of 1-1/2 in on a rail of 120 in") {
    // (120 - 33) / 23 = 87/23 in, about 3.78.
    const CompiledDesign design = row("22", "1-1/2\"", "120\"", "ends = gap");
    CHECK(gap(design) == inches(87, 23));
    CHECK(left(design, 1) == inches(87, 23));
    // The last ends one gap short of 120: 120 - 87/23 = 2673/23.
    CHECK(design.at("slat[22]", Face::right) == inches(2673, 23));
}

TEST_CASE("how many for gaps of at most 4 in: 22, where 21 would leave more") {
    // (120 - 4) / (1-1/2 + 4) = 21.09.
    CHECK(value_of("ceil((120\" - 4\") / (1-1/2\" + 4\"))").value == 22);
    CHECK(gap(row("22", "1-1/2\"", "120\"", "ends = gap")) <= inches(4));
    // (120 - 31-1/2) / 22 = 4.02.
    CHECK(gap(row("21", "1-1/2\"", "120\"", "ends = gap")) == inches(177, 44));
    CHECK(gap(row("21", "1-1/2\"", "120\"", "ends = gap")) > inches(4));
}

TEST_CASE("half gaps at the ends, and none") {
    // 36 - 8 x 2-1/2 = 16: over 8 gaps 2 in, over 7 gaps 16/7.
    const CompiledDesign half = row("8", "2-1/2\"", "36\"", "ends = gap / 2");
    CHECK(gap(half) == inches(2));
    CHECK(left(half, 1) == inches(1));
    CHECK(left(half, 8) == inches(65, 2));
    const CompiledDesign none = row("8", "2-1/2\"", "36\"", "ends = 0");
    CHECK(gap(none) == inches(16, 7));
    CHECK(none.at("slat[8]", Face::right) == inches(36));
}

TEST_CASE("centre pitch is slat and gap together, the same from slat to slat") {
    // 13 balusters of 32 mm in 1650 mm with ends of 41 mm: (1650 - 416 - 82) / 12 = 96.
    const CompiledDesign design = row("13", "32mm", "1650mm", "ends = 41mm");
    CHECK(gap(design) == 96);
    for (int i = 1; i <= 13; ++i) CHECK(left(design, i) == 41 + (i - 1) * 128);
}

TEST_CASE("slats from the middle: on it where they are odd, a gap on it where they are even") {
    const CompiledDesign odd = row("9", "1\"", "33\"", "ends = 0");
    CHECK(left(odd, 5) == inches(16));  // 16 to 17 in 33
    const CompiledDesign even = row("10", "1\"", "33\"", "ends = 0");
    // 23 / 9 apart: the fifth ends half a gap before 16-1/2, at 16-1/2 - 23/18 = 137/9.
    CHECK(even.at("slat[5]", Face::right) == inches(137, 9));
    CHECK(left(even, 6) == inches(33, 2) + inches(23, 18));
}

TEST_SUITE_END();
