#include "compiler/place/place.hpp"

#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/place");

namespace {

// A part with a place and a size along deep and tall; `lines` say what is known along wide.
std::string along_wide(const std::string& name, const std::string& lines) {
    return "part " + name +
           " { grain wide; front = piece.front; deep = 10mm; bottom = piece.bottom; tall = 10mm; " + lines +
           " }\n";
}

const Diagnostic& only(const CompiledDesign& design) {
    REQUIRE_MESSAGE(design.compilation().diagnostics.list().size() == 1, design.rendered());
    return design.compilation().diagnostics.list().front();
}

std::vector<std::string> labelled(const CompiledDesign& design) {
    std::vector<std::string> texts;
    for (const Label& label : only(design).labels) {
        texts.emplace_back(design.compilation().sources->text(label.span));
    }
    return texts;
}

}  // namespace

TEST_CASE("two of a face, the other face and the size give the third") {
    for (const char* lines :
         {"left = piece.left + 100mm; right = piece.left + 300mm", "left = piece.left + 100mm; wide = 200mm",
          "right = piece.right - 700mm; wide = 200mm", "left + right = 400mm; right - left = 200mm",
          "left + right = piece.wide - 600mm; wide = 200mm", "2 * left = wide; right = 300mm"}) {
        CAPTURE(std::string(lines));
        const CompiledDesign design = compile_body(along_wide("a", lines));
        CHECK(design.at("a", Face::left) == 100);
        CHECK(design.at("a", Face::right) == 300);
    }
}

TEST_CASE("lines of several parts are solved together") {
    // a + b fill 1000, and a is 200 wider: 600 and 400.
    const CompiledDesign design = compile_body(along_wide("a", "left = piece.left; wide = b.wide + 200mm") +
                                               along_wide("b", "left = a.right; right = piece.right"));
    CHECK(design.at("a", Face::right) == 600);
    CHECK(design.part("b").body.size(Axis::wide) == 400);
}

TEST_CASE("lines of the piece place parts too") {
    const CompiledDesign design =
        compile_body(along_wide("a", "wide = 50mm") + "a.right = piece.right - 25mm");
    CHECK(design.at("a", Face::left) == 925);
}

TEST_CASE("thirds and inches stay exact") {
    const CompiledDesign design =
        compile_body(along_wide("a", "left = piece.left + 1\" / 3; wide = piece.wide / 7") +
                     along_wide("b", "left = a.right; wide = 1/64\""));
    CHECK(design.at("a", Face::left) == ratio(127, 15));
    CHECK(design.part("a").body.size(Axis::wide) == ratio(1000, 7));
    // 127/15 + 1000/7 + 127/320, over 6720.
    CHECK(design.at("b", Face::right) == ratio(127 * 448 + 1000 * 960 + 127 * 21, 6720));
}

TEST_CASE("lines may say the same twice") {
    const CompiledDesign design =
        compile_body(along_wide("a", "left = piece.left; wide = 1\"; right = 25.4mm; wide = 25.4mm"));
    CHECK(design.report().empty());
}

TEST_CASE("a part with a size and no place") {
    const CompiledDesign design = compile_body(along_wide("a", "wide = 9mm"));
    CHECK(design.report() == "E0301 2:6 `a` has no place along `wide`: nothing says where it is\n");
    CHECK(only(design).help == "write `left = ...` or `right = ...`");
}

TEST_CASE("a part with one face") {
    const CompiledDesign near = compile_body(along_wide("a", "left = 9mm"));
    CHECK(near.report() ==
          "E0301 2:6 the `right` of `a` has no place: its `left` is fixed, its size is not\n");
    CHECK(only(near).help == "write `right = ...` or `wide = ...`");
    const CompiledDesign far = compile_body(along_wide("a", "right = 9mm"));
    CHECK(far.report() ==
          "E0301 2:6 the `left` of `a` has no place: its `right` is fixed, its size is not\n");
    CHECK(only(far).help == "write `left = ...` or `wide = ...`");
}

TEST_CASE("a part with neither") {
    const CompiledDesign design = compile_body(along_wide("a", ""));
    CHECK(design.report() == "E0301 2:6 `a` has neither a place nor a size along `wide`\n");
    CHECK(only(design).help == "write two of `left = ...`, `right = ...`, `wide = ...`");
}

TEST_CASE("all that a part lacks is said in one run") {
    const CompiledDesign design = compile_body("part a { grain wide; left = piece.left; deep = 9mm }");
    CHECK(design.report() ==
          "E0301 2:6 the `right` of `a` has no place: its `left` is fixed, its size is not\n");
    CHECK(only(design).notes ==
          std::vector<std::string>{
              "`a` has no place along `deep`: nothing says where it is; write `front = ...` or `back = ...`",
              "`a` has neither a place nor a size along `tall`; write two of `bottom = ...`, `top = ...`, "
              "`tall = "
              "...`"});
}

TEST_CASE("parts that hang on each other only are one error, which names both") {
    const CompiledDesign design =
        compile_body(along_wide("a", "left = b.right; wide = 9mm") + along_wide("b", "wide = 9mm"));
    CHECK(design.report() ==
          "E0301 2:6 `a` has no place along `wide`: it is tied only to parts that have none\n");
    CHECK(labelled(design) == std::vector<std::string>{"b"});
    CHECK(only(design).help == "fix one of them, as in `left = piece.left + ...`");
}

TEST_CASE("every part without a place is reported") {
    const CompiledDesign design = compile_body(along_wide("a", "wide = 9mm") + along_wide("b", "left = 9mm"));
    CHECK(design.report() ==
          "E0301 2:6 `a` has no place along `wide`: nothing says where it is\n"
          "E0301 3:6 the `right` of `b` has no place: its `left` is fixed, its size is not\n");
}

TEST_CASE("a piece without a size") {
    const CompiledDesign design = compile_text("piece \"Open\" { wide = 9mm; tall = 9mm }");
    CHECK(design.report() ==
          "E0301 1:7 the `back` of the piece has no place: its `front` is fixed, its size is not\n");
}

TEST_CASE("what hangs on a line that has an error is not reported as well") {
    const CompiledDesign design = compile_body(along_wide("a", "left = piece.lft; wide = 9mm") +
                                               along_wide("b", "left = a.right; wide = 9mm"));
    CHECK(design.report().find("E0201 2:") == 0);
    CHECK(design.compilation().diagnostics.list().size() == 1);
}

TEST_CASE("lines that disagree: both are shown, and by how much") {
    const CompiledDesign design =
        compile_body(along_wide("a", "left = piece.left\nright = 300mm\nwide = 280mm"));
    CHECK(design.report() == "E0302 4:1 lines disagree by 20 mm\n");
    CHECK(only(design).primary_text == "by the other lines, the left side is 20 mm more than the right");
    CHECK(labelled(design) == std::vector<std::string>{"left = piece.left", "right = 300mm"});
    CHECK(only(design).help == "take one of these lines out, or change a size in it");
}

TEST_CASE("a line that only disagrees with itself") {
    const CompiledDesign design =
        compile_body(along_wide("a", "left = piece.left; wide = 9mm") + "a.wide = a.wide + 1/2\"");
    CHECK(design.report() == "E0302 3:1 lines disagree by ~12.5 mm\n");
    CHECK(only(design).help == "this line contradicts itself: change one of its sizes");
}

TEST_CASE("a difference that the tape does not show is still a difference") {
    const CompiledDesign design =
        compile_body(along_wide("a", "left = piece.left\nright = 1/3 * 100mm\nwide = 33.333mm"));
    // 100/3 - 33.333 = 1/3000.
    CHECK(design.report() == "E0302 4:1 lines disagree by 1/3000 mm\n");
    const CompiledDesign inches =
        compile_body("unit in to 1/32\n" + along_wide("a", "left = 0\nright = 9\"\nwide = 8.999\""));
    CHECK(inches.report() == "E0302 5:1 lines disagree by 1/1000\"\n");
    CHECK(only(inches).primary_text.find(" 1/1000\" ") != std::string::npos);
}

TEST_CASE("lines of different axes do not disturb each other") {
    const CompiledDesign design = compile_body(
        "part a { grain wide; left = 1mm; wide = 2mm; right = 4mm; front = 1mm; deep = 2mm; bottom = 1mm; "
        "tall = "
        "2mm; top = 9mm }");
    CHECK(design.report() == "E0302 2:46 lines disagree by 1 mm\nE0302 2:110 lines disagree by 6 mm\n");
}

TEST_CASE("two unknown sizes are not multiplied") {
    const CompiledDesign product = compile_body(along_wide("a", "left = 0; wide = deep * tall"));
    CHECK(product.report() == "E0303 2:109 cannot multiply with a size that is not known before placement\n");
    const CompiledDesign quotient = compile_body(along_wide("a", "left = 0; wide = 1mm / deep"));
    CHECK(quotient.report() == "E0303 2:109 cannot divide with a size that is not known before placement\n");
    CHECK(compile_body(along_wide("a", "left = 0; wide = 2 * deep / 4 + 50% * tall")).at("a", Face::right) ==
          10);
}

TEST_CASE("a part without a thickness, or less") {
    CHECK(compile_body(along_wide("a", "left = 9mm; right = 9mm")).report() ==
          "E0304 2:6 `a` would be 0 mm along `wide`\n");
    const CompiledDesign turned = compile_body(along_wide("a", "left = 9mm; right = 4mm"));
    CHECK(turned.report() == "E0304 2:6 `a` would be -5 mm along `wide`\n");
    CHECK(only(turned).help == "its `right` must lie beyond its `left`");
}

TEST_CASE("a part without a size along two axes is one error that names both") {
    const CompiledDesign design = compile_body(
        "part a { grain wide; left = 9mm; wide = 0; front = 9mm; deep = -1/5mm; bottom = 0; tall = 9mm }");
    CHECK(design.report() == "E0304 2:6 `a` would be 0 mm along `wide`\n");
    CHECK(only(design).notes ==
          std::vector<std::string>{
              "`a` would be -0.2 mm along `deep`; its `back` must lie beyond its `front`"});
}

TEST_CASE("a line that places nothing is no equation") {
    const CompiledDesign design = compile_body("let rail = 3mm\nrail = 4mm");
    CHECK(design.report() ==
          "E0210 3:1 `rail` already has a value, and no face or size is placed by this line\n");
}

TEST_SUITE_END();
