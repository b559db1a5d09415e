#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/evaluate");

namespace {

using Names = std::vector<std::string>;

const std::string legs = stick("leg, handed wide deep", "tall", {100, 50, 0}, {40, 40, 700});

// A rail of 20 x 20 whose left face stands where `left` says.
std::string rail(const std::string& left) {
    return "part rail { grain wide; left = " + left +
           "\nwide = 100mm; front = 0; deep = 20mm; bottom = 0; tall = 20mm }\n";
}

std::string rungs(const std::string& count) {
    return "part rung[" + count +
           "] { grain wide; left = 5mm; wide = 90mm; front = index * 100mm; deep = 20mm; bottom = 0; tall = "
           "10mm }\n";
}

}  // namespace

TEST_CASE("handed parts are mirror images about the middle of the piece") {
    const CompiledDesign design = compile_body(legs);
    CHECK(design.part_names() ==
          Names{"leg[left front]", "leg[right front]", "leg[left back]", "leg[right back]"});
    // 1000 wide: 100..140 becomes 860..900; 1000 deep: 50..90 becomes 910..950.
    const Box& written = design.part("leg[left front]").body;
    CHECK(written == Box{{{100, 50, 0}}, {{140, 90, 700}}});
    CHECK(design.part("leg[right front]").body == Box{{{860, 50, 0}}, {{900, 90, 700}}});
    CHECK(design.part("leg[left back]").body == Box{{{100, 910, 0}}, {{140, 950, 700}}});
    CHECK(design.part("leg[right back]").body == Box{{{860, 910, 0}}, {{900, 950, 700}}});
    CHECK(design.part("leg[right back]").declared == "leg");
}

TEST_CASE("brackets choose a copy, a dot its face") {
    CHECK(compile_body(legs + rail("leg[left front].right")).at("rail", Face::left) == 140);
    CHECK(compile_body(legs + rail("leg[right].left")).at("rail", Face::left) == 860);
    CHECK(compile_body(legs + rail("leg[back right].left - leg[front].deep")).at("rail", Face::left) == 820);
}

TEST_CASE("where no copy is named, any will do that gives the same") {
    // Tops and sizes of mirror images are alike.
    CHECK(compile_body(legs + rail("leg.top")).at("rail", Face::left) == 700);
    CHECK(compile_body(legs + rail("leg.wide")).at("rail", Face::left) == 40);
}

TEST_CASE("where copies differ, the error asks which") {
    const CompiledDesign two =
        compile_body(stick("post, handed wide", "tall", {0, 0, 0}, {9, 9, 9}) + rail("post.right"));
    CHECK(two.report() ==
          "E0211 4:32 which `post`? `post[left]`, `post[right]` have their right in different places\n");
    CHECK(two.help() == "write `post[left].right`");
    const CompiledDesign four = compile_body(legs + rail("leg[left].back"));
    CHECK(four.report() ==
          "E0211 4:32 which `leg`? `leg[left front]`, `leg[left back]` have their back in "
          "different places\n");
    CHECK(four.help() == "write `leg[front].back`");
}

TEST_CASE("inside a handed part a name means the copy of the same hand") {
    const CompiledDesign design =
        compile_body(legs +
                     "part apron, handed wide { grain deep; left = leg.left + 5mm; wide = 20mm\n"
                     "front = leg[front].back; back = leg[back].front; top = leg.top; tall = 90mm }");
    CHECK(design.part("apron[left]").body == Box{{{105, 90, 610}}, {{125, 910, 700}}});
    CHECK(design.part("apron[right]").body == Box{{{875, 90, 610}}, {{895, 910, 700}}});
}

TEST_CASE("a copy that there is not is an error at the word") {
    const CompiledDesign no_top = compile_body(legs + rail("leg[top].left"));
    CHECK(no_top.report() == "E0211 4:36 `leg` has no top copy\n");
    CHECK(no_top.help() == "`handed tall` would make one");
    CHECK(compile_body(legs + rail("leg[first].wide")).help() ==
          "copies of a row are chosen by number, `first` or `last`");
    CHECK(compile_body(legs + rail("leg[2].wide")).report() == "E0211 4:32 `leg` is not a row\n");
}

TEST_CASE("a row is numbered from one, and knows its index") {
    const CompiledDesign design = compile_body(rungs("3"));
    CHECK(design.part_names() == Names{"rung[1]", "rung[2]", "rung[3]"});
    CHECK(design.at("rung[2]", Face::front) == 200);
}

TEST_CASE("copies of a row are chosen by number, first and last") {
    CHECK(compile_body(rungs("3") + rail("rung[2].back")).at("rail", Face::left) == 220);
    CHECK(compile_body(rungs("3") + rail("rung[first].front")).at("rail", Face::left) == 100);
    CHECK(compile_body(rungs("3") + rail("rung[last].front")).at("rail", Face::left) == 300);
    CHECK(compile_body("param n = 4\nlet k = n / 2\n" + rungs("n") + rail("rung[k].front"))
              .at("rail", Face::left) == 200);
    CHECK(compile_body(rungs("3") + rail("rung[4].front")).report() ==
          "E0207 3:37 expected a whole number from 1 to 3\n");
    CHECK(compile_body(rungs("3") + rail("rung[1.5].front")).report() ==
          "E0207 3:37 expected a whole number from 1 to 3\n");
}

TEST_CASE("a row as a whole stands for any copy, if they agree once placed") {
    CHECK(compile_body(rungs("3") + rail("rung.right")).at("rail", Face::left) == 95);
    const CompiledDesign design = compile_body(rungs("3") + rail("rung.back"));
    CHECK(design.report() == "E0211 3:32 the copies of the row differ here; which one is meant?\n");
}

TEST_CASE("a row may be handed: both copies of each place") {
    const CompiledDesign design = compile_body(
        "part pin[2], handed wide { grain tall; left = index * 100mm; wide = 10mm; front = 0; deep = 10mm; "
        "bottom = 0; tall = 50mm }");
    CHECK(design.part_names() == Names{"pin[left 1]", "pin[right 1]", "pin[left 2]", "pin[right 2]"});
    CHECK(design.at("pin[right 2]", Face::left) == 790);
}

TEST_CASE("a row's count is a whole number within the limit") {
    CHECK(compile_body("param n = 5\n" + rungs("n - 2")).part_names().size() == 3);
    for (const char* count : {"0", "5/2", "-1", "2mm"}) {
        CAPTURE(count);
        CHECK(compile_body(rungs(count)).report().find("E0207 2:11 expected a whole number from 1 ") == 0);
    }
    CHECK(compile_body(rungs("2000")).part_names().size() == 2000);
    const std::string too_many = compile_body(rungs("2001")).report();
    CHECK(too_many.find("2000") != std::string::npos);
}

TEST_CASE("index means something in rows only") {
    const CompiledDesign design = compile_body(rail("index * 1mm"));
    CHECK(design.report().find("E0201 2:32 `index` is not defined here\n") == 0);
}

TEST_CASE("names of parts are their own") {
    CHECK(compile_body(legs + legs).report() == "E0203 4:6 there are two parts `leg`\n");
    CHECK(compile_body(stick("piece", "wide", {0, 0, 0}, {9, 9, 9})).report().find("E0101 2:") == 0);
    const CompiledDesign typo = compile_body(legs + rail("lge[left].right"));
    CHECK(typo.report() == "E0201 4:32 there is no part `lge`\n");
    CHECK(typo.help() == "did you mean `leg`?");
    CHECK(compile_body(legs + rail("leg[left].rihgt")).help() == "did you mean `right`?");
}

TEST_SUITE_END();
