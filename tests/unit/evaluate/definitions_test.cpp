#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/evaluate");

namespace {

CompileOptions set(const std::string& name, const std::string& value) {
    CompileOptions options;
    options.settings = {{name, value}};
    return options;
}

CompileOptions variant(const std::string& name) {
    CompileOptions options;
    options.variant = name;
    return options;
}

const std::string bench =
    "param length = 42\" from 30\" to 60\"\nparam half = length / 2\n"
    "variant \"window seat\" { length = 54\" }\nvariant \"too long\" { length = 6' }\n";

}  // namespace

TEST_CASE("lets and params are used before they are written") {
    const CompiledDesign design = compile_body(
        "param value = double + one\nlet double = one * 2\nlet one = third * 3\nlet third = 1/3");
    CHECK(design.param("value").value == 3);
}

TEST_CASE("a circle of lets is an error that names where it closes") {
    const CompiledDesign design = compile_body("param a = b\nlet b = c + 1\nlet c = a * 2");
    CHECK(design.report() == "E0204 4:9 the value of `a` depends on itself\n");
    CHECK(compile_body("param a = a").report() == "E0204 2:11 the value of `a` depends on itself\n");
}

TEST_CASE("a circle is an error in the branch that is taken only") {
    CHECK(compile_body("param a = if 1 < 2 then 5 else b\nlet b = a").param("a").value == 5);
}

TEST_CASE("a name has one meaning") {
    const CompiledDesign design = compile_body("let a = 1\nparam a = 2\nlet b = a");
    CHECK(design.report() == "E0203 3:7 `a` is defined twice\n");
    REQUIRE(design.compilation().diagnostics.list().front().labels.size() == 1);
    CHECK(design.compilation().diagnostics.list().front().labels.front().text == "first defined here");
}

TEST_CASE("an unknown name is an error, with the one that was meant") {
    const CompiledDesign near = compile_body("let apron = 1\"\nparam value = aprn");
    CHECK(near.report() == "E0201 3:15 `aprn` is not defined here\n");
    CHECK(near.help() == "did you mean `apron`?");
    CHECK(compile_body("param value = zebra").help() ==
          "define it: `let zebra = ...` or `param zebra = ...`");
}

TEST_CASE("a chain of 800 lets is followed, one of 2000 is refused") {
    const auto chain = [](int links) {
        std::string text = "param value = a0\n";
        for (int i = 0; i < links; ++i) {
            text += "let a" + std::to_string(i) + " = a" + std::to_string(i + 1) + "\n";
        }
        return compile_body(text + "let a" + std::to_string(links) + " = 7");
    };
    CHECK(chain(800).param("value").value == 7);
    CHECK(chain(2000).report().find("definitions depend on each other more than 1000 deep") !=
          std::string::npos);
}

TEST_CASE("bounds include their ends") {
    CHECK(compile_body("param a = 30\" from 30\" to 60\"").report().empty());
    CHECK(compile_body("param a = 60\" from 30\" to 60\"").report().empty());
    CHECK(compile_body("param a = 762mm from 30\" to 762mm").report().empty());
    CHECK(compile_body("param a = 3").report().empty());
}

TEST_CASE("a param outside its bounds says by which bound") {
    const CompiledDesign above = compile_body("param a = 61mm from 30mm to 60mm");
    CHECK(above.report() == "E0205 2:11 `a` is 61 mm, above 60 mm\n");
    const Diagnostic& diagnostic = above.compilation().diagnostics.list().front();
    REQUIRE(diagnostic.labels.size() == 1);
    CHECK(above.compilation().sources->text(diagnostic.labels.front().span) == "to 60mm");
    CHECK(compile_body("param a = 29mm from 30mm").report() == "E0205 2:11 `a` is 29 mm, below 30 mm\n");
}

TEST_CASE("bounds may depend on other params") {
    const std::string text = "param depth = 300mm\nparam shelf = 200mm to depth - 20mm";
    CHECK(compile_body(text).report().empty());
    CHECK(compile_body(text, set("depth", "210mm")).report() ==
          "E0205 3:15 `shelf` is 200 mm, above 190 mm\n");
}

TEST_CASE("--set gives a param another value, and all that follows from it") {
    const CompiledDesign design = compile_body(bench, set("length", "48\""));
    CHECK(design.param("length").value == inches(48));
    CHECK(design.param("half").value == inches(24));
}

TEST_CASE("--set takes expressions that name the piece's params") {
    const CompiledDesign design = compile_body(bench + "param width = 40\"\n", set("length", "width + 2\""));
    CHECK(design.param("length").value == inches(42));
}

TEST_CASE("--set is held to the bounds") {
    const CompiledDesign design = compile_body(bench, set("length", "61\""));
    CHECK(design.report() == "E0205 1:16 `length` is ~1549.5 mm, above 1524 mm\n");
}

TEST_CASE("--set knows params only") {
    const CompiledDesign design = compile_body(bench + "let lenght = 1\"\n", set("lenght", "1\""));
    CHECK(design.report() == "E0201 1:7 the piece has no param `lenght`\n");
    CHECK(design.help() == "did you mean `length`?");
    CHECK(compile_body(bench, set("length", "")).report().find("E0101 1:") == 0);
    CHECK(compile_body(bench, set("length", "1\" +")).report().find("E0101 1:") == 0);
    CHECK(compile_body(bench, set("half", "half")).report().find("E0204 ") == 0);
}

TEST_CASE("a variant gives params other values, --set beats it") {
    CHECK(compile_body(bench).param("length").value == inches(42));
    CompileOptions options = variant("window seat");
    CHECK(compile_body(bench, options).param("half").value == inches(27));
    options.settings = {{"length", "50\""}};
    CHECK(compile_body(bench, options).param("half").value == inches(25));
}

TEST_CASE("a variant is held to the bounds") {
    CHECK(compile_body(bench, variant("too long")).report() ==
          "E0205 5:31 `length` is ~1829 mm, above 1524 mm\n");
}

TEST_CASE("an unknown variant is an error, with the one that was meant") {
    const CompiledDesign design = compile_body(bench, variant("windowseat"));
    CHECK(design.report() == "E0209 1:7 the piece has no variant \"windowseat\"\n");
    CHECK(design.help() == "did you mean \"window seat\"?");
    CHECK(compile_body("", variant("any")).help().find("it has no variants at all") == 0);
}

TEST_CASE("a variant holds values of params and nothing else") {
    CHECK(compile_body("let a = 1\nvariant \"b\" { a = 2 }", variant("b")).report() ==
          "E0201 3:15 the piece has no param `a`\n");
    CHECK(compile_body("param a = 1\nvariant \"b\" { let a = 2 }", variant("b")).report() ==
          "E0210 3:15 `let` has no meaning in a variant, which gives params other values\n");
}

TEST_CASE("if chooses parts, else if the next") {
    const std::string text =
        "param doors = 1\n"
        "if doors == 0 { " +
        stick("open", "wide", {0, 0, 0}, {9, 9, 9}) + "} else if doors == 1 { " +
        stick("single", "wide", {0, 0, 0}, {9, 9, 9}) + "} else { " +
        stick("double", "wide", {0, 0, 0}, {9, 9, 9}) + "}";
    CHECK(compile_body(text).part_names() == std::vector<std::string>{"single"});
    CHECK(compile_body(text, set("doors", "0")).part_names() == std::vector<std::string>{"open"});
    CHECK(compile_body(text, set("doors", "2")).part_names() == std::vector<std::string>{"double"});
}

TEST_CASE("if without else chooses nothing, and lets in a branch count there only") {
    const std::string text =
        "param doors = 0\nparam width = 5mm\nlet other = 1mm\n"
        "if doors > 0 { let other = 2mm\n" +
        stick("door", "wide", {0, 0, 0}, {9, 9, 9}) + "}\n" + stick("side", "wide", {0, 0, 0}, {9, 9, 9});
    CHECK(compile_body(text).part_names() == std::vector<std::string>{"side"});
    CHECK(compile_body(text, set("doors", "1")).report() == "E0203 5:20 `other` is defined twice\n");
}

TEST_CASE("if stands in parts too, for each copy of a row") {
    const CompiledDesign design = compile_body(
        "part rung[3] { grain wide; left = 0; wide = 10mm; front = 0; deep = 1mm; tall = 1mm\n"
        "if index == 2 { bottom = 50mm } else { bottom = index * 10mm } }");
    CHECK(design.at("rung[1]", Face::bottom) == 10);
    CHECK(design.at("rung[2]", Face::bottom) == 50);
    CHECK(design.at("rung[3]", Face::bottom) == 30);
}

TEST_CASE("a condition cannot wait for placement") {
    const CompiledDesign design = compile_body(
        "part a { grain wide; left = 0; wide = 9mm; front = 0; deep = 9mm; bottom = 0; tall = 9mm }\n"
        "part b { grain wide; left = 0; wide = 9mm; front = 0; deep = 9mm; bottom = 0\n"
        "if a.right > 5mm { tall = 9mm } else { tall = 8mm } }");
    CHECK(design.report().find("E0213 4:4 a condition cannot use `a.right`: conditions are decided before "
                               "the parts have their places\n") != std::string::npos);
}

TEST_CASE("a condition of the piece on a part that is declared says why it cannot") {
    const std::string seat = stick("seat", "wide", {0, 0, 100}, {400, 300, 20});
    const std::string message =
        " a condition cannot use `seat.tall`: conditions are decided before the parts "
        "have their places\n";
    CHECK(compile_body(seat + "if seat.tall > 1mm { require 1 == 1 }").report() == "E0213 4:4" + message);
    const CompiledDesign by_let =
        compile_body(seat + "let thick = 2 * seat.tall\nif 9mm < thick { require 1 == 1 }");
    CHECK(by_let.report() == "E0213 5:4" + message);
    const std::vector<Label> labels = by_let.compilation().diagnostics.list().front().labels;
    REQUIRE(labels.size() == 1);
    CHECK(by_let.compilation().sources->text(labels.front().span) == "seat.tall");
    CHECK(compile_body(seat + "if wide > 1mm { require 1 == 1 }").report().find("cannot use `wide`") !=
          std::string::npos);
    CHECK(compile_body("param thick = 20mm\nlet slim = thick / 2\n" + seat +
                       "if slim < 15mm { seat.tall = 20mm }")
              .report()
              .empty());
}

TEST_CASE("requirements are checked on places, and say what the left side is") {
    const std::string text = stick("seat", "wide", {0, 0, 100}, {400, 300, 20});
    CHECK(compile_body(text + "require seat.top >= 120mm \"low\"").report().empty());
    const CompiledDesign design = compile_body(text + "require seat.top >= 121mm \"too low to sit on\"");
    CHECK(design.report() == "E0206 4:9 too low to sit on\n");
    CHECK(design.compilation().diagnostics.list().front().primary_text == "the left side is 120 mm");
    CHECK(compile_body("require 1 > 2").report() == "E0206 2:9 a requirement of the design does not hold\n");
}

TEST_SUITE_END();
