// Measured sizes laid over a design.
#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// Two posts 40 thick, a rail between them, three slats across, 300 apart from end to end.
const std::string frame =
    "piece \"Frame\" {\nunit mm\nparam length = 400mm\nwide = length; deep = 60mm; tall = 300mm\n"
    "part post, handed wide {\ngrain tall\nwide = 40mm; deep = wide\nleft = piece.left; front = piece.front\n"
    "bottom = piece.bottom; top = piece.top\n}\n"
    "part rail {\ngrain wide\nleft = post[left].right; right = post[right].left\n"
    "front = piece.front; deep = 20mm; bottom = piece.bottom; tall = 60mm\n}\n"
    "part slat[3] {\ngrain wide\nleft = post[left].right; right = post[right].left\n"
    "back = piece.back; deep = 10mm; tall = 30mm\n}\n"
    "space slat along tall from piece.bottom to piece.top { ends = 0mm }\n}\n";

CompiledDesign measured(const std::string& lines) {
    return compile_files({{"built.rod", "use \"frame.rod\"\n" + lines}, {"frame.rod", frame}}, "built.rod");
}

}  // namespace

TEST_SUITE("unit/evaluate") {
    TEST_CASE("a measured size takes the place of the part's own, and what hangs on it follows") {
        const CompiledDesign design = measured("made post { wide = 39mm }\n");
        CHECK(design.report().empty());
        CHECK(design.at("post[left]", Face::right) == 39);
        CHECK(design.at("post[right]", Face::left) == 361);
        CHECK(design.at("post[left]", Face::back) == 39);  // as deep as it is wide
        CHECK(design.part("rail").body.size(Axis::wide) == 322);
        CHECK(design.part("slat[2]").body.size(Axis::wide) == 322);
    }

    TEST_CASE("each of two sizes that are tied takes what was measured") {
        const CompiledDesign design = measured("made post {\nwide = 39mm\ndeep = 41mm\n}\n");
        CHECK(design.part("post[right]").body.size(Axis::wide) == 39);
        CHECK(design.part("post[right]").body.size(Axis::deep) == 41);
        // Measured alone, it leaves the other as it was.
        CHECK(measured("made post { deep = 41mm }\n").part("post[left]").body.size(Axis::wide) == 40);
    }

    TEST_CASE("a size that follows from where others are stays as drawn, and is kept with the piece") {
        const CompiledDesign design = measured("made rail { wide = 318mm }\n");
        CHECK(design.report().empty());
        CHECK(design.part("rail").body.size(Axis::wide) == 320);
        REQUIRE(design.piece().made.size() == 1);
        const MadeSize& made = design.piece().made.front();
        REQUIRE(made.parts.size() == 1);
        CHECK(design.piece()[made.parts.front()].name == "rail");
        CHECK(made.size[0] == Rational(318));
        CHECK_FALSE(made.size[1]);
    }

    TEST_CASE("of a row all are measured alike, one copy alone is only held against the drawing") {
        const CompiledDesign all = measured("made slat { tall = 28mm }\n");
        for (const char* name : {"slat[1]", "slat[2]", "slat[3]"})
            CHECK(all.part(name).body.size(Axis::tall) == 28);
        CHECK(all.at("slat[3]", Face::top) == 300);
        const CompiledDesign one =
            measured("made slat[2] { tall = 28mm }\nmade post[right] { wide = 39mm }\n");
        CHECK(one.part("slat[2]").body.size(Axis::tall) == 30);
        CHECK(one.part("post[right]").body.size(Axis::wide) == 40);
        CHECK(one.piece().made.size() == 2);
    }

    TEST_CASE("parts that are named are made; the choosing of boards makes none") {
        const CompiledDesign design =
            measured("made post[left] { }\ndone choose_boards on rail\ndone mill, lay_out on slat[1]\n");
        CHECK(design.part("post[left]").made);
        CHECK_FALSE(design.part("post[right]").made);
        CHECK_FALSE(design.part("rail").made);
        CHECK(design.part("slat[1]").made);
        CHECK_FALSE(design.part("slat[2]").made);
        REQUIRE(design.piece().done.size() == 3);
        CHECK(design.piece().done[2].step == "lay_out");
    }

    TEST_CASE("a file that is laid over gives parameters other values") {
        const CompiledDesign design = measured("length = 500mm\n");
        CHECK(design.part("rail").body.size(Axis::wide) == 420);
        CHECK(measured("lenght = 500mm\n").report() == "E0201 2:1 the piece has no param `lenght`\n");
    }

    TEST_CASE("what was measured is shown as finely as it was read") {
        CHECK(measured("made post { wide = 39.7mm }\n").piece().style.step == ratio(1, 10));
        CHECK(measured("made post { wide = 39.5mm }\n").piece().style.step == ratio(1, 2));
    }

    TEST_CASE("what is no measured size is refused where it stands") {
        CHECK(measured("made post {\nleft = 3mm\n}\n").report().rfind("E0210 3:1 ", 0) == 0);
        CHECK(measured("made post {\nwide = 0mm\n}\n").report() ==
              "E0207 3:8 no part measures nothing, or less\n");
        CHECK(measured("made post {\nwide = 39mm\nwide = 38mm\n}\n").report() ==
              "E0203 4:1 this size is measured twice\n");
        CHECK(measured("made pots { wide = 39mm }\n").report() == "E0201 2:6 there is no part `pots`\n");
        CHECK(measured("made post { wide = 39 }\n").report().rfind("E02", 0) == 0);
    }

    TEST_CASE("a size that is taken from the work is cut over by what the design or the shop says") {
        const std::string part =
            "part board {\ngrain wide\nleft = piece.left; wide = 500mm; front = piece.front; deep = 100mm\n"
            "bottom = piece.bottom; tall = 20mm\ntake wide, deep from the work";
        const CompiledDesign said = compile_body(part + " over 5mm\n}\n");
        CHECK(said.report().empty());
        const Kind& board = said.kind("board");
        CHECK(board.overall(Axis::wide) == 500);
        CHECK(board.cut(Axis::wide) == 505);
        CHECK(board.cut(Axis::deep) == 105);
        CHECK(board.cut(Axis::tall) == 20);
        // stdlib/data/shop.yaml: 1/2 in (12.7 mm) along the grain, 1/8 in (3.175 mm) across it.
        const CompiledDesign usual = compile_body(part + "\n}\n");
        CHECK(usual.kind("board").cut(Axis::wide) == 500 + Rational(127, 10));
        CHECK(usual.kind("board").cut(Axis::deep) == 100 + Rational(127, 40));
        CHECK(compile_body(part + " over 0mm\n}\n").report().rfind("E0207 ", 0) == 0);
    }
}
