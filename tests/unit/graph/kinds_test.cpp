#include <doctest/doctest.h>

#include "tests/support/design.hpp"
#include "tests/support/piece_text.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/graph");

namespace {

// A hole that does not come through, 10 mm wide, centred as many mm from the face's near edge and end.
std::string hole(const std::string& face, int from_edge, int from_end) {
    return "bore(diameter = 10mm, deep = 15mm, from_edge = " + std::to_string(from_edge) +
           "mm, from_end = " + std::to_string(from_end) + "mm) on " + face + "\n";
}

CompiledDesign posts(const std::string& handed, const std::string& shapes) {
    return compile_body(stick("post, handed " + handed, "tall", {100, 100, 0}, {40, 60, 300}, shapes));
}

// Every feature of a kind must be the same on each of its parts, whichever way the part stands.
void check_reflection(const CompiledDesign& design, const std::string& written, const std::string& copy,
                      std::array<bool, 3> along) {
    const Piece& piece = design.piece();
    const Reflection reflection{along, piece.box};
    CHECK(reflection.apply(design.part(written).body) == design.part(copy).body);
    CHECK(placed_features(piece, design.part(written), reflection) ==
          placed_features(piece, design.part(copy)));
}

}  // namespace

TEST_CASE("parts of a row are one kind") {
    const CompiledDesign design = compile_body(
        "part slat[5] { grain wide; left = 0; wide = 900mm; front = index * 100mm; deep = 60mm; bottom = 0; "
        "tall = 20mm\n" +
        hole("top face", 20, 100) + "}");
    REQUIRE(design.piece().kinds.size() == 1);
    CHECK(design.piece().kinds.front().parts.size() == 5);
    CHECK(design.piece().kinds.front().letter == "A");
}

TEST_CASE("one that differs by a hair is another kind") {
    const CompiledDesign design = compile_body(
        "part slat[3] { grain wide; left = 0; front = index * 100mm; deep = 60mm; bottom = 0; tall = 9mm\n"
        "if index == 2 { wide = 900mm + 1/1000000 * 1mm } else { wide = 900mm } }");
    REQUIRE(design.piece().kinds.size() == 2);
    CHECK(design.piece().kinds[0].letter == "A1");
    CHECK(design.piece().kinds[0].parts.size() == 2);
    CHECK_FALSE(design.piece().kinds[1].mirror_of.has_value());
}

TEST_CASE("parts of different names are different kinds, lettered as they are written") {
    const CompiledDesign design = compile_body(stick("b", "wide", {0, 0, 0}, {90, 20, 9}) +
                                               stick("a", "wide", {0, 50, 0}, {90, 20, 9}));
    REQUIRE(design.piece().kinds.size() == 2);
    CHECK(design.piece().kinds[0].name == "b");
    CHECK(design.piece().kinds[0].letter == "A");
    CHECK(design.piece().kinds[1].letter == "B");
}

TEST_CASE("a mirrored part that is its own mirror image is one kind") {
    // A hole in the middle of the inside face: turned about its length, the left post is the right one.
    const CompiledDesign design = posts("wide", hole("right face", 30, 150));
    REQUIRE(design.piece().kinds.size() == 1);
    CHECK(design.piece().kinds.front().parts.size() == 2);
    CHECK(design.part("post[left]").placement.turn != design.part("post[right]").placement.turn);
    check_reflection(design, "post[left]", "post[right]", {true, false, false});
}

TEST_CASE("turned end for end is the same kind too") {
    // Off the middle in depth, in the middle of the height: the right post is the left one upside down.
    const CompiledDesign design = posts("wide", hole("right face", 15, 150));
    REQUIRE(design.piece().kinds.size() == 1);
    check_reflection(design, "post[left]", "post[right]", {true, false, false});
}

TEST_CASE("off the middle both ways it is a pair") {
    const CompiledDesign design = posts("wide", hole("right face", 15, 100));
    REQUIRE(design.piece().kinds.size() == 2);
    CHECK(design.piece().kinds[0].letter == "A1");
    CHECK(design.piece().kinds[1].letter == "A2");
    CHECK_FALSE(design.piece().kinds[0].mirror_of.has_value());
    CHECK(design.piece().kinds[1].mirror_of == KindId{0});
    CHECK(design.piece().kinds[1].size == design.piece().kinds[0].size);
    check_reflection(design, "post[left]", "post[right]", {true, false, false});
}

TEST_CASE("four copies are two pairs: mirrored twice is turned") {
    const CompiledDesign design = posts("wide deep", hole("right face", 15, 100));
    REQUIRE(design.piece().kinds.size() == 2);
    CHECK(design.part("post[left front]").kind == design.part("post[right back]").kind);
    CHECK(design.part("post[right front]").kind == design.part("post[left back]").kind);
    CHECK(design.piece().kinds[1].mirror_of == KindId{0});
    check_reflection(design, "post[left front]", "post[right front]", {true, false, false});
    check_reflection(design, "post[left front]", "post[left back]", {false, true, false});
    check_reflection(design, "post[left front]", "post[right back]", {true, true, false});
}

TEST_CASE("eight copies too") {
    const CompiledDesign design = compile_body(
        stick("block, handed wide deep tall", "tall", {0, 0, 0}, {40, 60, 300}, hole("right face", 15, 100)));
    // There is no `handed` with three axes in the grammar: one is one too many.
    CHECK(design.report().find("E0101 ") == 0);
}

TEST_CASE("a placement is a turn and a move, never a mirror image") {
    const CompiledDesign design =
        posts("wide deep", hole("right face", 15, 100) + "round(2mm) on right front edge");
    for (const Part& part : design.piece().parts) {
        CAPTURE(part.name);
        CHECK_FALSE(part.placement.turn.mirrored());
        // The kind's own box, put where the part is, is the part's body.
        const Vector size = design.piece()[part.kind].size;
        const Body whole{BodyForm::box,
                         {{{size.at[0] / 2, size.at[1] / 2, 0}},
                          {Axis::wide, true},
                          {Axis::deep, true},
                          {Axis::tall, true}},
                         size.at[0],
                         size.at[1],
                         size.at[2],
                         {}};
        CHECK(placed_box(whole, part.placement) == part.body);
    }
}

TEST_CASE("length runs with the grain, thickness is the smaller of the others") {
    const CompiledDesign design = compile_body(stick("a", "wide", {0, 0, 0}, {10, 20, 30}) +
                                               stick("b", "deep", {100, 0, 0}, {10, 20, 30}) +
                                               stick("c", "tall", {200, 0, 0}, {10, 20, 30}) +
                                               stick("d", "tall", {300, 0, 0}, {10, 20, 30}, "thick deep"));
    CHECK(design.kind("a").size == Vector{{10, 30, 20}});
    CHECK(design.kind("b").size == Vector{{20, 30, 10}});
    CHECK(design.kind("c").size == Vector{{30, 20, 10}});
    CHECK(design.kind("d").size == Vector{{30, 10, 20}});
}

TEST_CASE("a part has a grain, and no thickness along it") {
    CHECK(compile_body("part a { left = 0; wide = 9mm; front = 0; deep = 9mm; bottom = 0; tall = 9mm }")
              .report() == "E0407 2:6 `a` does not say which way its grain runs\n");
    CHECK(compile_body(stick("a", "wide", {0, 0, 0}, {9, 9, 9}, "thick wide")).report() ==
          "E0407 2:6 the thickness of `a` cannot lie along its grain\n");
}

TEST_CASE("joints make copies differ: only the joined ends are alike") {
    const CompiledDesign design = compile_body(
        stick("post", "tall", {0, 0, 0}, {40, 40, 300}) +
        "part rail[2] { grain wide; left = post.right; wide = 200mm; front = 10mm; deep = 20mm; bottom = "
        "index * 100mm; tall = 50mm }\njoin rail[1].left to post with mortise_and_tenon\n");
    REQUIRE(design.piece().kinds.size() == 3);
    CHECK(design.kind("rail[2]").features.empty());
    CHECK(design.part("rail[1]").kind != design.part("rail[2]").kind);
}

TEST_SUITE_END();
