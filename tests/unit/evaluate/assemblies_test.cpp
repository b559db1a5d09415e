#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/evaluate");

namespace {

using Names = std::vector<std::string>;

// A box of two sides, mirrored about its own middle, and a floor between them.
const std::string till =
    "assembly till(room, board = 10mm) {\n"
    "wide = room + 2 * board; deep = 200mm; tall = 80mm\n"
    "part side, handed wide { grain deep; left = piece.left; wide = board; front = "
    "piece.front; back = piece.back; bottom = piece.bottom; top = piece.top }\n"
    "part floor { grain wide; left = side[left].right; right = side[right].left; front = "
    "piece.front; back = piece.back; bottom = piece.bottom; tall = 5mm }\n}\n";

std::string at(int left, int bottom) {
    return "{ left = piece.left + " + std::to_string(left) +
           "mm; front = piece.front; bottom = piece.bottom + " + std::to_string(bottom) + "mm }\n";
}

}  // namespace

TEST_CASE("an assembly is placed by its envelope, its parts by its own faces") {
    const CompiledDesign design = compile_body(till + "place till as upper(room = 300mm) " + at(50, 500));
    CHECK(design.part_names() == Names{"upper/side[left]", "upper/side[right]", "upper/floor"});
    // 320 wide from 50 on.
    CHECK(design.part("upper/side[left]").body == Box{{{50, 0, 500}}, {{60, 200, 580}}});
    CHECK(design.part("upper/side[right]").body == Box{{{360, 0, 500}}, {{370, 200, 580}}});
    CHECK(design.part("upper/floor").body == Box{{{60, 0, 500}}, {{360, 200, 505}}});
    REQUIRE(design.piece().assemblies.size() == 1);
    CHECK(design.piece().assemblies.front().name == "upper");
    CHECK(design.piece().assemblies.front().box == Box{{{50, 0, 500}}, {{370, 200, 580}}});
    CHECK(design.part("upper/floor").assembly == AssemblyId{0});
}

TEST_CASE("each place has its own values, by position or by name") {
    const CompiledDesign design =
        compile_body(till + "param width = 100mm\nplace till as a(width, 20mm) " + at(0, 0) +
                     "place till as b(board = 4mm, room = 2 * width) " + at(500, 0));
    CHECK(design.at("a/floor", Face::left) == 20);
    CHECK(design.at("a/floor", Face::right) == 120);
    CHECK(design.at("b/floor", Face::left) == 504);
    CHECK(design.at("b/floor", Face::right) == 704);
}

TEST_CASE("parameters of an assembly hide the piece's names, its values come from outside") {
    const CompiledDesign design =
        compile_body("let board = 30mm\n" + till + "place till as a(board, board / 3) " + at(0, 0));
    CHECK(design.at("a/floor", Face::left) == 10);
    CHECK(design.at("a/floor", Face::right) == 40);
}

TEST_CASE("the piece refers to faces of an assembly and of its parts") {
    const CompiledDesign design = compile_body(
        till + "place till as a(100mm) " + at(0, 0) +
        "part lid { grain wide; left = a.left; right = a.right; front = a.front; deep = a.deep / 2; bottom = "
        "a.side[right].top; tall = a.floor.tall }");
    CHECK(design.part("lid").body == Box{{{0, 0, 80}}, {{120, 100, 85}}});
}

TEST_CASE("assemblies stand in assemblies") {
    const CompiledDesign design = compile_body(
        till +
        "assembly chest(n) { wide = 400mm; deep = 200mm; tall = 300mm\n"
        "place till as low(n * 100mm) { left = piece.left; front = piece.front; bottom = piece.bottom + 10mm "
        "}\n"
        "place till as high(n * 100mm) { left = piece.left; front = piece.front; bottom = low.top } }\n"
        "place chest as c(2) " +
        at(100, 0));
    CHECK(design.at("c/low/floor", Face::bottom) == 10);
    CHECK(design.at("c/high/floor", Face::bottom) == 90);
    CHECK(design.at("c/high/floor", Face::left) == 110);
    REQUIRE(design.piece().assemblies.size() == 3);
    CHECK(design.piece().assemblies[0].parent == AssemblyId::none);
    CHECK(design.piece().assemblies[1].parent == AssemblyId{0});
    CHECK(design.piece().assemblies[2].name == "c/high");
}

TEST_CASE("an assembly in a file of its own sees its own names only") {
    const std::string piece =
        "use \"tray.rod\"\npiece \"Sample\" { unit mm\nwide = 1000mm; deep = 1000mm; tall = "
        "1000mm\nlet thick = 7mm\nplace tray as a(PLACED) " +
        at(0, 0) + "}\n";
    const std::string tray =
        "assembly tray(board = 5mm) { wide = 100mm; deep = 100mm; tall = 50mm\n"
        "part floor { grain wide; left = piece.left; wide = piece.wide; front = "
        "piece.front; deep = piece.deep; bottom = piece.bottom; tall = BOARD } }\n";
    const auto compiled = [&](const std::string& board, const std::string& given) {
        std::string assembly = tray;
        std::string design = piece;
        assembly.replace(assembly.find("BOARD"), 5, board);
        design.replace(design.find("PLACED"), 6, given);
        return compile_files({{"tray.rod", assembly}, {"box.rod", design}}, "box.rod");
    };
    CHECK(compiled("board", "").at("a/floor", Face::top) == 5);
    CHECK(compiled("board", "thick").at("a/floor", Face::top) == 7);
    CHECK(compiled("thick", "").report().find("`thick` is not defined here") != std::string::npos);
}

TEST_CASE("parameters that are missing, unknown or too many") {
    CHECK(compile_body(till + "place till as a() " + at(0, 0))
              .report()
              .find("E0207 7:1 `room` must be given\n") == 0);
    CHECK(compile_body(till + "place till as a(1mm, rom = 2mm) " + at(0, 0)).report() ==
          "E0207 7:22 `till` has no parameter for this\n");
    CHECK(compile_body(till + "place till as a(1mm, 2mm, 3mm) " + at(0, 0)).report() ==
          "E0207 7:27 `till` has no parameter for this\n");
}

TEST_CASE("an assembly without a place along an axis is an error that names it") {
    const CompiledDesign design =
        compile_body(till + "place till as a(100mm) { front = piece.front; bottom = piece.bottom }");
    CHECK(design.report().find("`a` has no place along `wide`") != std::string::npos);
}

TEST_CASE("where an assembly is placed only its faces are said") {
    CHECK(compile_body(till + "place till as a(100mm) { left = 0; front = 0; bottom = 0; grain wide }")
              .report()
              .find("E0210 7:59 `grain` has no meaning where an assembly is placed") == 0);
    CHECK(compile_body("place chest as a").report() == "E0201 2:7 there is no assembly `chest`\n");
    CHECK(compile_body(till + "place till as a(9mm) " + at(0, 0) +
                       stick("b", "wide", {0, 0, 0}, {9, 9, 9}, "require a[1].left > 0"))
              .report()
              .find("an assembly has no copies to choose from") != std::string::npos);
}

TEST_CASE("an assembly says how far it opens; a piece does not open, and nothing opens by nothing") {
    const auto with = [](const std::string& line) {
        std::string text = till;
        return compile_body(text.insert(text.rfind('}'), line + "\n") + "place till as a(100mm) " + at(0, 0));
    };
    CHECK(with("opens by board * 2").piece().assemblies.front().opens == Rational(20));
    CHECK_FALSE(with("").piece().assemblies.front().opens.has_value());
    CHECK(with("opens by 0mm").report().find("an assembly opens by a length above zero") !=
          std::string::npos);
    CHECK(with("opens by 3kg").report().find("an assembly opens by a length above zero") !=
          std::string::npos);
    CHECK(compile_body("opens by 3mm").report().find("`opens` has no meaning in a piece") !=
          std::string::npos);
}

TEST_CASE("an assembly that places itself is stopped at the limit") {
    const CompiledDesign design = compile_body(
        "assembly a() { wide = 1mm; deep = 1mm; tall = 1mm\nplace a as b() { left = 0; front = 0; bottom = 0 "
        "} }\nplace a as b() { left = 0; front = 0; bottom = 0 }");
    CHECK(design.report().find("assemblies within assemblies more than 64 deep") != std::string::npos);
}

TEST_SUITE_END();
