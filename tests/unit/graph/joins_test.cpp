#include <doctest/doctest.h>

#include "tests/support/design.hpp"
#include "tests/support/piece_text.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/graph");

namespace {

// A joint of the test's own, with a body that lies in the middle nowhere.
const std::string peg =
    "joint peg(a: end, b: face) {\n\"A square tongue.\"\nlong = 20mm\n"
    "extend a by long\nleave a box(a.thick / 3, a.width / 2, long) at (1mm, 2mm)\n"
    "remove b box(a.thick / 3, a.width / 2, long + 1mm) at (1mm, 2mm)\nslides along "
    "inward\n}\n";

CompiledDesign with_peg(const std::string& body) {
    return compile_text(peg + "piece \"Sample\" { unit mm; wide = 1000mm; deep = 1000mm; tall = 1000mm\n" +
                        body + "}\n");
}

// Two posts 45 square and 300 tall, a rail 200 long, 18 thick and 60 wide between them.
const std::string frame = stick("post, handed wide", "tall", {355, 0, 0}, {45, 45, 300}) +
                          stick("rail", "wide", {400, 10, 120}, {200, 18, 60});

const Feature& only_feature(const CompiledDesign& design, const std::string& part) {
    REQUIRE(design.kind(part).features.size() == 1);
    return design.kind(part).features.front();
}

Box box_of_feature(const CompiledDesign& design, const std::string& part) {
    return placed_box(only_feature(design, part).body, design.part(part).placement);
}

}  // namespace

TEST_CASE("a joint's bodies stand where arithmetic says") {
    const CompiledDesign design = with_peg(frame + "join rail.left to post with peg\n");
    // The ends meet in a rectangle 18 x 60 around (400, 19, 150). u is the rail's thickness, deep; v its
    // width, tall: the middle of the body is 1 behind and 2 above. 18 / 3 by 60 / 2, into the left post.
    CHECK(box_of_feature(design, "rail") == Box{{{380, 17, 137}}, {{400, 23, 167}}});
    CHECK(box_of_feature(design, "post[left]") == Box{{{379, 17, 137}}, {{400, 23, 167}}});
    CHECK(only_feature(design, "rail").op == FeatureOp::leave);
    CHECK(only_feature(design, "post[left]").op == FeatureOp::remove);
    CHECK(only_feature(design, "rail").made_by == "peg");
    CHECK(design.kind("post[right]").features.empty());
}

TEST_CASE("a kind's frame has its length, width and thickness along x, y and z") {
    const CompiledDesign design = with_peg(frame + "join rail.left to post with peg\n");
    const Kind& rail = design.kind("rail");
    CHECK(rail.size == Vector{{200, 60, 18}});
    const Box own = placed_box(rail.features.front().body, Placement{});
    // Twenty long at one end or the other, as the kind happens to be turned; six thick, thirty wide.
    CHECK(own.size(Axis::wide) == 20);
    CHECK(own.size(Axis::deep) == 30);
    CHECK(own.size(Axis::tall) == 6);
    CHECK((own.low[Axis::wide] == -20 || own.low[Axis::wide] == 200));
    CHECK((own.low[Axis::deep] == 17 || own.low[Axis::deep] == 60 - 30 - 17));
    CHECK((own.low[Axis::tall] == 7 || own.low[Axis::tall] == 18 - 6 - 7));
    CHECK_FALSE(design.part("rail").placement.turn.mirrored());
}

TEST_CASE("a joint lengthens its part where it meets") {
    const CompiledDesign one = with_peg(frame + "join rail.left to post with peg\n");
    CHECK(one.kind("rail").overall(Axis::wide) == 220);
    CHECK(one.kind("rail").overall(Axis::deep) == 60);
    const CompiledDesign both = with_peg(frame + "join rail.left to post with peg(long = 15mm)\n" +
                                         "join rail.right to post with peg(30mm)\n");
    CHECK(both.kind("rail").overall(Axis::wide) == 245);
    CHECK(both.kind("rail").size[Axis::wide] == 200);
    CHECK(both.kind("post[left]").overall(Axis::wide) == 300);
    CHECK(both.part("rail").body == Box{{{400, 10, 120}}, {{600, 28, 180}}});
}

TEST_CASE("two tongues at one end lengthen it by the longer") {
    const CompiledDesign design = with_peg(frame + "join rail.left to post with peg(long = 15mm)\n" +
                                           "join rail.left to post with peg(long = 25mm)\n");
    CHECK(design.kind("rail").overall(Axis::wide) == 225);
}

TEST_CASE("a joint knows its members, its frame and how it closes") {
    const CompiledDesign design = with_peg(frame + "join rail.left, rail.right to post with peg\n");
    REQUIRE(design.piece().joints.size() == 2);
    const Joint& left = design.piece().joints[0];
    CHECK(left.members[0].role == "a");
    CHECK(design.piece()[left.members[0].part].name == "rail");
    CHECK(left.members[0].face == Face::left);
    CHECK(left.members[0].form == MemberForm::end);
    CHECK(design.piece()[left.members[1].part].name == "post[left]");
    CHECK(left.members[1].face == Face::right);
    CHECK(left.members[1].form == MemberForm::face);
    CHECK(left.frame.origin == Vector{{400, 19, 150}});
    CHECK(left.frame.u == Direction{Axis::deep, true});
    CHECK(left.frame.v == Direction{Axis::tall, true});
    CHECK(left.frame.w == Direction{Axis::wide, false});
    CHECK(left.contact_u == 18);
    CHECK(left.contact_v == 60);
    CHECK(left.slides == Direction{Axis::wide, false});
    const Joint& right = design.piece().joints[1];
    CHECK(right.frame.origin == Vector{{600, 19, 150}});
    CHECK(right.slides == Direction{Axis::wide, true});
}

TEST_CASE("a joint may slide along any of its directions") {
    for (const auto& each :
         std::vector<std::pair<std::string, Direction>>{{"thickwise", {Axis::deep, true}},
                                                        {"-thickwise", {Axis::deep, false}},
                                                        {"widthwise", {Axis::tall, true}},
                                                        {"-widthwise", {Axis::tall, false}},
                                                        {"-inward", {Axis::wide, true}},
                                                        {"lengthwise", {Axis::wide, false}}}) {
        const std::string& word = each.first;
        const Direction expected = each.second;
        CAPTURE(word);
        const CompiledDesign design =
            compile_text("joint cleat(a: end, b: face) { \"A cleat.\"\nslides along " + word +
                         " }\npiece \"Sample\" { wide = 1000mm; deep = 1000mm; tall = 1000mm\n" + frame +
                         "join rail.left to post with cleat\n}");
        CHECK(design.piece().joints.front().slides == expected);
    }
}

TEST_CASE("joints with the same numbers on parts of the same name are one kind of joint") {
    const std::string rails = frame + "join rail.left, rail.right to post with peg\n";
    CHECK(with_peg(rails).piece().joint_kinds.size() == 1);
    CHECK(with_peg(rails).piece().joint_kinds.front().joints.size() == 2);
    const CompiledDesign two = with_peg(frame + "join rail.left to post with peg\n" +
                                        "join rail.right to post with peg(long = 21mm)\n");
    REQUIRE(two.piece().joint_kinds.size() == 2);
    CHECK(two.piece().joint_kinds[0].work.numbers.front().second.value == 20);
    CHECK(two.piece().joint_kinds[1].work.numbers.front().second.value == 21);
    CHECK(two.piece().joints[1].kind == JointKindId{1});
}

TEST_CASE("a joint of the design's own comes before the library's") {
    const CompiledDesign own = compile_text(
        "joint dowels(a: end, b: face) { \"Not the library's.\" }\npiece \"Sample\" { wide = 1000mm; deep = "
        "1000mm; tall = 1000mm\n" +
        frame + "join rail.left to post with dowels\n}");
    CHECK(own.piece().joint_kinds.front().work.doc == "Not the library's.");
    CHECK(own.kind("rail").features.empty());
}

TEST_CASE("a joint in a file that is used, and one that nobody knows") {
    const std::string piece =
        "use \"own.rod\"\npiece \"Sample\" { wide = 1000mm; deep = 1000mm; tall = 1000mm\n" + frame +
        "join rail.left to post with peg\n}";
    CHECK(compile_files({{"own.rod", peg}, {"box.rod", piece}}, "box.rod").piece().joints.size() == 1);
    const CompiledDesign unknown = compile_body(frame + "join rail.left to post with housin");
    CHECK(unknown.report() == "E0201 6:29 there is no joint `housin`\n");
    CHECK(unknown.help() == "did you mean `housing`?");
}

TEST_CASE("hands are found: the copy of the same hand, then the one that touches") {
    const CompiledDesign design =
        with_peg(stick("leg, handed wide deep", "tall", {0, 0, 0}, {40, 40, 300}) +
                 "part rail, handed deep { grain wide; left = leg[left].right; right = leg[right].left; "
                 "front = leg.front; "
                 "deep = 18mm; bottom = 100mm; tall = 60mm }\njoin rail.left, rail.right to leg with peg\n");
    std::vector<std::string> pairs;
    for (const Joint& joint : design.piece().joints) {
        pairs.push_back(design.piece()[joint.members[0].part].name + " " +
                        design.piece()[joint.members[1].part].name);
    }
    CHECK(pairs == std::vector<std::string>{"rail[front] leg[left front]", "rail[back] leg[left back]",
                                            "rail[front] leg[right front]", "rail[back] leg[right back]"});
}

TEST_CASE("a face is written for the left copy and is the opposite one on the right") {
    const CompiledDesign design = with_peg(
        stick("board", "deep", {300, 0, 0}, {400, 100, 20}) +
        "part arm, handed wide { grain wide; right = board.left; wide = 50mm; front = 0; deep = 20mm; "
        "bottom = 0; tall = 20mm }\njoin arm.right to board with peg\n");
    REQUIRE(design.piece().joints.size() == 2);
    CHECK(design.piece().joints[0].members[0].face == Face::right);
    CHECK(design.piece().joints[1].members[0].face == Face::left);
    CHECK(design.piece().joints[1].members[1].face == Face::right);
}

TEST_CASE("members that do not touch: the nearest and the gap are named") {
    const std::string post = stick("post", "tall", {355, 0, 0}, {45, 45, 300});
    const CompiledDesign gap = with_peg(post + stick("rail", "wide", {403, 10, 120}, {200, 18, 60}) +
                                        "join rail.left to post with peg\n");
    CHECK(gap.report().find(" `rail.left` does not touch `post`\n") != std::string::npos);
    CHECK(gap.compilation().diagnostics.list().front().notes ==
          std::vector<std::string>{"`post` is nearest: 3 mm away along `wide`"});
    const CompiledDesign into = with_peg(post + stick("rail", "wide", {398, 10, 120}, {200, 18, 60}) +
                                         "join rail.left to post with peg\n");
    CHECK(into.compilation().diagnostics.list().front().notes ==
          std::vector<std::string>{"`post` is nearest: they run 2 mm into each other along `wide`"});
    const CompiledDesign corner = with_peg(post + stick("rail", "wide", {400, 45, 120}, {200, 18, 60}) +
                                           "join rail.left to post with peg\n");
    CHECK(corner.compilation().diagnostics.list().front().notes ==
          std::vector<std::string>{"`post` is nearest: they meet only in an edge or a corner"});
}

TEST_CASE("a join that could mean several is an error, a fastening means them all") {
    const std::string row =
        "part foot[2] { grain deep; left = index * 200mm; wide = 30mm; front = 0; deep = 90mm; "
        "bottom = 0; tall = 20mm }\n" +
        stick("board", "wide", {0, 0, 20}, {1000, 90, 15});
    const CompiledDesign several = compile_body(row + "join board to foot with dowels");
    CHECK(several.report().find(
              "E0402 5:6 `board` touches several: `foot[1]` (bottom), `foot[2]` (bottom)\n") !=
          std::string::npos);
    CHECK(compile_body(row + "fasten board to foot with screws(inset = 20mm)").piece().joints.size() == 2);
    CHECK(compile_body(row + "fasten board to foot[2] with screws(inset = 20mm)").piece().joints.size() == 1);
}

TEST_CASE("a member of the wrong kind: an end, a face or an edge is asked for") {
    const CompiledDesign wrong =
        with_peg(stick("cap", "wide", {400, 0, 180}, {200, 45, 20}) +
                 stick("rail", "wide", {400, 10, 120}, {200, 18, 60}) + "join rail.top to cap with peg\n");
    CHECK(wrong.report().find("`peg` needs an end as its a; the top of `rail` is an edge\n") !=
          std::string::npos);
    CHECK(wrong.report().find("E0403 ") == 0);
    CHECK_FALSE(wrong.compilation().piece.has_value());
}

TEST_CASE("a joint's checks are warnings, or errors where it says so") {
    const auto checked = [](const std::string& check) {
        return compile_text(
            "joint cleat(a: end, b: face) { \"A cleat.\"\nlong = 20mm\ncheck long <= b.depth / 3 "
            "else " +
            check + " }\npiece \"Sample\" { unit mm; wide = 1000mm; deep = 1000mm; tall = 1000mm\n" + frame +
            "join rail.left to post with cleat\njoin rail.right to post with cleat(long = 15mm)\n}");
    };
    const CompiledDesign warned = checked("warn \"{long} into {b.depth} of wood\"");
    // 45 / 3 = 15: the second holds.
    CHECK(warned.report() == "W0404 9:29 20 mm into 45 mm of wood\n");
    CHECK(warned.compilation().piece.has_value());
    const CompiledDesign stopped = checked("error \"{long} into {b.depth} of wood\"");
    CHECK(stopped.report() == "E0408 9:29 20 mm into 45 mm of wood\n");
    CHECK(stopped.compilation().diagnostics.list().front().severity == Severity::error);
    CHECK_FALSE(stopped.compilation().piece.has_value());
}

namespace {

// A piece whose rail is joined to its post by a joint with that body.
CompiledDesign with_cleat(const std::string& body, const std::string& call = "cleat") {
    return compile_text("joint cleat(a: end, b: face) { \"A cleat.\"\n" + body +
                        "\n}\npiece \"Sample\" { unit mm; wide = 1000mm; deep = 1000mm; tall = 1000mm\n" +
                        frame + "join rail.left to post with " + call + "\n}");
}

std::vector<std::string> names_of(const CompiledDesign& design) {
    std::vector<std::string> names;
    for (const auto& [name, quantity] : design.piece().joint_kinds.front().work.numbers)
        names.push_back(name);
    return names;
}

}  // namespace

TEST_CASE("a joint's numbers are its parameters and the lets that its steps name") {
    const CompiledDesign design = with_cleat(
        "long = 20mm\nlet shift = long / 2\nlet wide = 3 * long\nlet rest = b.depth - long\nlet fence = 4mm\n"
        "remove b box(wide, wide, long) at (0, shift)\ncheck rest > 0 else error \"{rest} is left\"\n"
        "step cut b \"Cut {wide} wide.\" using router { fence = fence + 1mm }");
    CHECK(names_of(design) == std::vector<std::string>{"long", "wide", "fence"});
}

TEST_CASE("joints that differ in a let that no step names are not one kind") {
    const CompiledDesign design = compile_text(
        "joint cleat(a: end, b: face) { \"A cleat.\"\nlet away = b.before\n"
        "remove b box(5mm, 5mm, 5mm) at (0, away / 100) }\n"
        "piece \"Sample\" { unit mm; wide = 1000mm; deep = 1000mm; tall = 1000mm\n" +
        stick("post", "tall", {355, 0, 0}, {45, 45, 300}) +
        "part rail[2] { grain wide; left = post.right; wide = 200mm; front = 10mm; deep = 18mm; tall = 60mm\n"
        "bottom = index * 80mm }\njoin rail.left to post with cleat\n}");
    CHECK(design.piece().joint_kinds.size() == 2);
}

TEST_CASE("a step comes after steps that there are, in use or not, and after stages") {
    const std::string two = "step cut \"Cut.\"\nif 1 == 2 { step pare \"Pare.\" }\n";
    for (const char* after : {"cut", "pare", "cut, pare", "joinery", "mortise_and_tenon.cut_mortise",
                              "mortise_and_tenon.cut_haunch", "taper.form"}) {
        CAPTURE(std::string(after));
        CHECK(with_cleat(two + "step fit \"Fit.\" after " + after).report().empty());
    }
    const auto wrong = [&](const std::string& after) {
        const CompiledDesign design = with_cleat(two + "step fit \"Fit.\" after " + after);
        CHECK_FALSE(design.compilation().piece.has_value());
        return design.report() + design.help();
    };
    CHECK(wrong("cutt") == "E0201 4:23 `cleat` has no step `cutt`\ndid you mean `cut`?");
    CHECK(wrong("cut, joinry") == "E0201 4:28 `cleat` has no step `joinry`\ndid you mean `joinery`?");
    CHECK(wrong("polish") ==
          "E0201 4:23 `cleat` has no step `polish`\nits steps are cut, pare, fit; the stages are mill, "
          "lay_out, "
          "joinery, shaping, sanding, assembly, finishing, fastening; a step of another joint is written "
          "`joint.step`");
    CHECK(wrong("fit") ==
          "E0201 4:23 the step `fit` cannot come after itself\n"
          "name the step that comes before it, or take this `after` out");
    CHECK(wrong("housin.fit") == "E0201 4:23 there is no joint or shape `housin`\ndid you mean `housing`?");
    CHECK(wrong("housing.fitt") == "E0201 4:23 `housing` has no step `fitt`\ndid you mean `fit`?");
}

TEST_CASE("arguments of a joint") {
    const auto used = [](const std::string& arguments) {
        return with_peg(frame + "join rail.left to post with peg(" + arguments + ")\n").report();
    };
    CHECK(used("lng = 3mm") == "E0207 14:33 `peg` has no `lng`\n");
    CHECK(used("1mm, 2mm") == "E0207 14:38 `peg` takes only 1 values\n");
    CHECK(used("long = 3deg").find("`long` is a length, not an angle\n") != std::string::npos);
    CHECK(used("long = -3mm").find("E0406 ") == 0);
}

TEST_SUITE_END();
