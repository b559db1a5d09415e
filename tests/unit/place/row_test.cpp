#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/place");

namespace {

// A row along deep from 100 mm to 600 mm: a span of 500 mm.
std::string row(const std::string& count, const std::string& size, const std::string& lines) {
    return "part slat[" + count + "] { grain wide; left = 0; wide = 90mm; bottom = 0; tall = 5mm; " + size +
           " }\nspace slat along deep from piece.front + 100mm to piece.front + 600mm { " + lines + " }\n";
}

std::vector<Rational> fronts(const CompiledDesign& design) {
    std::vector<Rational> result;
    for (const Part& part : design.piece().parts) result.push_back(part.body.low[Axis::deep]);
    return result;
}

std::vector<Rational> at(std::initializer_list<long> numerators, long denominator = 1) {
    std::vector<Rational> result;
    for (const long numerator : numerators) result.push_back(ratio(numerator, denominator));
    return result;
}

}  // namespace

TEST_CASE("the gap is the unknown") {
    // 500 = 4 x 80 + 3 g + 2 x 15: g = 50.
    CHECK(fronts(compile_body(row("4", "deep = 80mm", "ends = 15mm"))) == at({115, 245, 375, 505}));
}

TEST_CASE("the ends are the unknown") {
    // 500 = 4 x 80 + 3 x 40 + 2 e: e = 30.
    CHECK(fronts(compile_body(row("4", "deep = 80mm", "gap = 40mm"))) == at({130, 250, 370, 490}));
}

TEST_CASE("the size is the unknown") {
    // 500 = 4 w + 3 x 20 + 2 x 10: w = 105.
    const CompiledDesign design = compile_body(row("4", "", "gap = 20mm; ends = 10mm"));
    CHECK(fronts(design) == at({110, 235, 360, 485}));
    for (const Part& part : design.piece().parts) CHECK(part.body.size(Axis::deep) == 105);
}

TEST_CASE("the count is the unknown: the whole number nearest to the wanted gap, then the gap is exact") {
    // (500 - 20 + 20) / (80 + 20) = 5 parts: 400 + 4 g + 20, g = 20.
    CHECK(fronts(compile_body(row("fit", "deep = 80mm", "gap = 20mm; ends = 10mm"))) ==
          at({110, 210, 310, 410, 510}));
    // (500 - 20 + 30) / 110 = 4.6: 5 again, the same gap of 20 although 30 was wanted.
    CHECK(fronts(compile_body(row("fit", "deep = 80mm", "gap = 30mm; ends = 10mm"))) ==
          at({110, 210, 310, 410, 510}));
    // (500 - 20 + 40) / 120 = 4.3: 4, and 320 + 3 g + 20 leaves 160/3.
    CHECK(fronts(compile_body(row("fit", "deep = 80mm", "gap = 40mm; ends = 10mm"))) ==
          at({330, 730, 1130, 1530}, 3));
}

TEST_CASE("a count is found where the ends hang on the gap") {
    // (500 - 20) / (80 + 20) = 4.8: 5 parts, 400 + 6 g = 500, g = 50/3.
    CHECK(fronts(compile_body(row("fit", "deep = 80mm", "gap = 20mm; ends = gap"))) ==
          at({350, 640, 930, 1220, 1510}, 3));
    // Half gaps: 500 / (80 + 20) = 5, 400 + 5 g = 500, g = 20.
    CHECK(fronts(compile_body(row("fit", "deep = 80mm", "ends = gap / 2; gap = 20mm"))) ==
          at({110, 210, 310, 410, 510}));
}

TEST_CASE("no more are fitted than there is room for without gaps") {
    // (500 + 10) / (180 + 10) = 2.7, but 3 x 180 is more than 500: 360 + g = 500.
    CHECK(fronts(compile_body(row("fit", "deep = 180mm", "gap = 10mm; ends = 0"))) == at({100, 420}));
    // (500 - 20) / (300 + 20) = 1.5, but 2 x 300 is more than 500: 300 + 2 g = 500.
    CHECK(fronts(compile_body(row("fit", "deep = 300mm", "gap = 20mm; ends = gap"))) == at({200}));
}

TEST_CASE("one part that fits with fixed ends must fill the row") {
    CHECK(fronts(compile_body(row("fit", "deep = 480mm", "gap = 20mm; ends = 10mm"))) == at({110}));
    const CompiledDesign design = compile_body(row("fit", "deep = 400mm", "gap = 20mm; ends = 10mm"));
    CHECK(
        design.report() ==
        "E0305 3:1 one `slat` is the most that fits, and with its ends it takes 420 mm, not the 500 mm that "
        "the row is long\n");
    CHECK(design.help() ==
          "write `ends = gap` to have it in the middle, or give a smaller `gap`, or a count");
}

TEST_CASE("a line of a fitted row that has no value is reported as that") {
    CHECK(compile_body(row("fit", "deep = 80mm", "gap = 20mm; ends = 10kg")).report() ==
          "E0202 3:92 expected a length, found a mass\n");
}

TEST_CASE("a count fits with sizes that only placement finds") {
    const std::string rail = stick("rail", "deep", {0, 0, 50}, {20, 80, 20});
    CHECK(fronts(compile_body(row("fit", "deep = rail.deep", "gap = 20mm; ends = 10mm") + rail)) ==
          at({110, 210, 310, 410, 510, 0}));
}

TEST_CASE("rows of two places of one assembly are counted each for itself") {
    const std::string rack =
        "assembly rack(room) { wide = 90mm; tall = 9mm; deep = room\n"
        "part slat[fit] { grain wide; left = piece.left; right = piece.right; bottom = "
        "piece.bottom; tall = 5mm; deep = 10mm }\n"
        "space slat along deep from piece.front to piece.back { gap = 10mm; ends = 0 } }\n";
    const CompiledDesign design =
        compile_body(rack +
                     "place rack as a(50mm) { left = 0; front = 0; bottom = 0 }\n"
                     "place rack as b(90mm) { left = 100mm; front = 0; bottom = 0 }\n");
    // 50 = 3 x 10 + 2 x 10, 90 = 5 x 10 + 4 x 10.
    CHECK(fronts(design) == at({0, 20, 40, 0, 20, 40, 60, 80}));
}

TEST_CASE("gap and ends may hang on each other") {
    // Ends as wide as the gaps: 500 = 4 x 80 + 5 g, g = 36. Half gaps: 500 = 320 + 4 g, g = 45.
    CHECK(fronts(compile_body(row("4", "deep = 80mm", "ends = gap"))) == at({136, 252, 368, 484}));
    CHECK(fronts(compile_body(row("4", "deep = 80mm", "ends = gap / 2"))) == at({245, 495, 745, 995}, 2));
}

TEST_CASE("a gap below zero is an overlap, and placed as such") {
    // 500 = 4 x 140 + 3 g: g = -20.
    CHECK(fronts(compile_body(row("4", "deep = 140mm", "ends = 0"))) == at({100, 220, 340, 460}));
}

TEST_CASE("a row lies between other parts, and its mirror image with them") {
    const CompiledDesign design = compile_body(
        "part rung[2], handed wide { grain deep; left = piece.left + 10mm; wide = 20mm; front = 0; deep = "
        "9mm; tall "
        "= 30mm }\nspace rung along tall from piece.bottom to piece.top { ends = 200mm }");
    // 1000 = 2 x 30 + g + 400: g = 540.
    CHECK(design.at("rung[left 2]", Face::bottom) == 770);
    CHECK(design.at("rung[right 2]", Face::bottom) == 770);
    CHECK(design.at("rung[right 1]", Face::right) == 990);
}

TEST_CASE("two unknowns are one too many") {
    const CompiledDesign design = compile_body(row("4", "deep = 80mm", ""));
    CHECK(design.report() == "E0305 3:1 the row of `slat` has more than one unknown\n");
    CHECK(design.help() == "give `ends = ...` or `gap = ...` in the row, or the parts' size along it");
    CHECK(compile_body(row("4", "", "gap = 20mm")).report().find("E0305 3:1 ") != std::string::npos);
}

TEST_CASE("no unknown: the lines agree or are an error with the amount") {
    CHECK(compile_body(row("4", "deep = 80mm", "gap = 50mm; ends = 15mm")).report().empty());
    const CompiledDesign design = compile_body(row("4", "deep = 80mm", "gap = 50mm; ends = 20mm"));
    // 320 + 150 + 40 = 510.
    CHECK(design.report().find(" lines disagree by 10 mm\n") != std::string::npos);
}

TEST_CASE("one part in a row has ends and no gap") {
    CHECK(fronts(compile_body(row("1", "deep = 80mm", "gap = 0"))) == at({310}));
    CHECK(compile_body(row("1", "", "gap = 0; ends = 10mm")).part("slat[1]").body.size(Axis::deep) == 480);
}

TEST_CASE("a count cannot be found without a gap, ends and a size") {
    for (const char* lines : {"ends = 10mm", "gap = 10mm", ""}) {
        CAPTURE(std::string(lines));
        const CompiledDesign design = compile_body(row("fit", "deep = 80mm", lines));
        CHECK(design.report().find("E0305 3:1 how many of `slat` fit cannot be found\n") !=
              std::string::npos);
    }
    CHECK(compile_body(row("fit", "", "gap = 10mm; ends = 0"))
              .report()
              .find("E0305 3:1 how many of `slat` fit cannot be found\n") != std::string::npos);
}

TEST_CASE("only gap and ends are said in a row, and only of rows") {
    CHECK(compile_body(row("4", "deep = 80mm", "ends = 15mm; grain wide")).report() ==
          "E0210 3:86 `grain` has no meaning in a row: only `gap = ...` and `ends = ...`\n");
    const CompiledDesign single = compile_body(stick("rail", "deep", {0, 0, 50}, {20, 80, 20}) +
                                               "space rail along deep from piece.front to piece.back");
    CHECK(single.report() == "E0210 4:7 `rail` is not a row\n");
    CHECK(compile_body("space rung along deep from piece.front to piece.back").report() ==
          "E0201 2:7 there is no part `rung`\n");
}

TEST_SUITE_END();
