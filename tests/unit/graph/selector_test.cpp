#include <doctest/doctest.h>

#include <algorithm>

#include "tests/support/design.hpp"
#include "tests/support/piece_text.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/graph");

namespace {

using Names = std::vector<std::string>;

const std::string shapes =
    "shape ease(target: edges) { \"Rounded.\"\nblend target by 1mm }\n"
    "shape dot(target: faces) { \"A dot.\"\nremove target box(2mm, 2mm, 1mm) }\n"
    "shape nib(target: end) { \"A dot on an end.\"\nremove target box(2mm, 2mm, 1mm) }\n";

// A stick left of the middle, in front of it, in the middle of the height.
CompiledDesign worked(const std::string& shape, const std::string& grain = "tall") {
    return compile_text(shapes + "piece \"Sample\" { unit mm; wide = 1000mm; deep = 1000mm; tall = 1000mm\n" +
                        stick("stile", grain, {100, 200, 300}, {40, 50, 400}, shape) + "}\n");
}

// The faces that dots were made in.
Names faces(const std::string& selector, const std::string& grain = "tall") {
    const CompiledDesign design = worked("dot on " + selector, grain);
    Names names;
    const Part& part = design.part("stile");
    for (const Feature& feature : design.kind("stile").features) {
        const Box dot = placed_box(feature.body, part.placement);
        for (const Face face : all_faces) {
            if (dot.at(face) == part.body.at(face)) names.emplace_back(face_name(face));
        }
    }
    std::sort(names.begin(), names.end());
    return names;
}

Names edges(const std::string& selector) {
    const CompiledDesign design = worked("ease on " + selector);
    Names names;
    for (const Feature& feature : design.kind("stile").features) {
        for (std::string& edge : placed_edges(feature, design.part("stile").placement)) names.push_back(edge);
    }
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace

TEST_CASE("a face by its name") {
    for (const Face face : all_faces) {
        CAPTURE(face_name(face));
        CHECK(faces(std::string(face_name(face)) + " face") == Names{std::string(face_name(face))});
    }
}

TEST_CASE("long faces run with the grain, ends are the other two") {
    CHECK(faces("long faces") == Names{"back", "front", "left", "right"});
    CHECK(faces("ends") == Names{"bottom", "top"});
    CHECK(faces("end faces", "wide") == Names{"left", "right"});
    CHECK(faces("all faces") == Names{"back", "bottom", "front", "left", "right", "top"});
    CHECK(faces("top end") == Names{"top"});
}

TEST_CASE("inside faces look towards the middle of the piece, outside faces away") {
    CHECK(faces("inside faces") == Names{"back", "right"});
    CHECK(faces("outside faces") == Names{"front", "left"});
    // From 300 to 700 it stands in the middle: neither top nor bottom is inside.
    CHECK(faces("inside faces", "wide") == Names{"back"});
    CHECK(faces("inside right face") == Names{"right"});
}

TEST_CASE("edges by the faces that meet in them") {
    CHECK(edges("top front edge") == Names{"front top"});
    CHECK(edges("top edges") == Names{"back top", "front top", "left top", "right top"});
    CHECK(edges("long edges") == Names{"left back", "left front", "right back", "right front"});
    CHECK(edges("long front edges") == Names{"left front", "right front"});
    CHECK(edges("end edges").size() == 8);
    CHECK(edges("all edges").size() == 12);
    CHECK(edges("inside long edges") == Names{"left back", "right back", "right front"});
}

TEST_CASE("several selectors are taken one after another") {
    CHECK(faces("left face, right face") == Names{"left", "right"});
    CHECK(edges("top front edge, bottom front edge") == Names{"front bottom", "front top"});
}

TEST_CASE("edges that one line eases are one feature") {
    CHECK(worked("ease on long edges").kind("stile").features.size() == 1);
    CHECK(worked("ease on left front edge\nease on right front edge").kind("stile").features.size() == 2);
}

TEST_CASE("selectors that choose nothing, or something else") {
    const auto trouble = [](const std::string& shape) { return worked(shape).report(); };
    CHECK(trouble("dot on left right face") == "E0405 9:8 the part has no `left right face`\n");
    CHECK(trouble("ease on left right edge") == "E0405 9:9 the part has no `left right edge`\n");
    CHECK(trouble("dot on left") == "E0405 9:8 `left` does not say whether faces or edges are meant\n");
    CHECK(trouble("dot on wooden face") == "E0405 9:8 `wooden` chooses no face or edge\n");
    CHECK(trouble("ease on left face") ==
          "E0405 9:9 `ease` is worked on edges, `left face` names something else\n");
    CHECK(trouble("dot on left front edge") ==
          "E0405 9:8 `dot` is worked on faces, `left front edge` names something else\n");
    CHECK(trouble("nib on left face") ==
          "E0405 9:8 `nib` is worked on ends, `left face` names something else\n");
    CHECK(trouble("dots on left face") == "E0201 9:1 there is no shape `dots`\n");
}

TEST_CASE("a shape's body stands where arithmetic says") {
    const CompiledDesign design = worked(
        "bore(diameter = 10mm, deep = 20mm, from_edge = 15mm, from_end = 100mm) on "
        "right face");
    // On the right face, at 140: 15 from the front edge at 200, 100 above the bottom at 300, 20 deep.
    const Feature& hole = design.kind("stile").features.front();
    CHECK(hole.body.size_u == 10);
    CHECK(placed_box(hole.body, design.part("stile").placement) == Box{{{120, 215, 400}}, {{140, 215, 400}}});
}

TEST_CASE("shapes of a handed part are mirrored with it") {
    const CompiledDesign design = compile_body(
        stick("stile, handed wide", "tall", {100, 200, 0}, {40, 50, 400},
              "bore(diameter = 10mm, deep = 20mm, from_edge = 15mm, from_end = 100mm) on right face"));
    const Feature& hole = design.kind("stile[right]").features.front();
    // 1000 wide: from 860 on.
    CHECK(placed_box(hole.body, design.part("stile[right]").placement) ==
          Box{{{860, 215, 100}}, {{880, 215, 100}}});
}

TEST_SUITE_END();
