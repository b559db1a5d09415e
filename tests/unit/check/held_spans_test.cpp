// Where parts are held, and how much of their movement is left to their joints.
#include "compiler/check/movement/held_spans.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "tests/support/design.hpp"
#include "tests/unit/check/rates.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

constexpr Seasons year{8, 6, 12};

// A board from front to back, 300 mm, on two battens along its width, by `fasten ... with`.
std::string board_on_battens(const std::string& cut, const std::string& with) {
    return "wood oak = red_oak " + cut + "\n" + stick("board of oak", "wide", {0, 0, 50}, {600, 300, 20}) +
           stick("near of oak", "deep", {50, 0, 0}, {40, 300, 50}) +
           stick("far of oak", "deep", {500, 0, 0}, {40, 300, 50}) +
           "fasten near.top, far.top to board with " + with + "\n";
}

std::optional<HeldSpan> span_of(const CompiledDesign& design, const std::string& part, Axis axis) {
    for (const HeldSpan& span : held_spans(design.piece(), year).spans) {
        if (design.piece().parts[span.part].name == part && span.axis == axis) return span;
    }
    return std::nullopt;
}

const std::string own_joint = R"(
joint holder(a: part, b: part) {
    remove b box(10mm, 200mm, 10mm)
    slides along inward
)";

}  // namespace

TEST_SUITE("unit/check") {
    TEST_CASE("a board that is held fast along a batten grows by its own rate over what is held") {
        const CompiledDesign design = compile_files(
            {{"a.rod", own_joint +
                           "    glue faces\n}\npiece \"Board\" { unit mm; wide = 600mm; deep = 300mm; tall = "
                           "70mm\n" +
                           board_on_battens("flat", "holder") + "}\n"}},
            "a.rod");
        const auto span = span_of(design, "board", Axis::deep);
        REQUIRE(span);
        CHECK(span->span == doctest::Approx(200));
        CHECK(span->growth == doctest::Approx(200 * flat_oak));
        CHECK(span->fast);
        CHECK(excess(*span, year) == doctest::Approx(200 * flat_oak * 4 - give));
        // Along its own grain it is held as well, and does not move.
        CHECK_FALSE(span_of(design, "board", Axis::wide));
    }

    TEST_CASE("room is counted for swelling and for shrinking, at both ends") {
        const auto with_room = [](const std::string& lets) {
            return compile_files(
                {{"a.rod", own_joint + "    glue faces\n" + lets +
                               "}\npiece \"Board\" { unit mm; wide = 600mm; deep = 300mm; tall = "
                               "70mm\n" +
                               board_on_battens("quartered", "holder") + "}\n"}},
                "a.rod");
        };
        const auto both =
            span_of(with_room("    lets b move along widthwise by 2mm either way\n"), "board", Axis::deep);
        REQUIRE(both);
        CHECK_FALSE(both->fast);
        CHECK(both->growth == doctest::Approx(200 * quartered_oak));
        CHECK(both->room_out == doctest::Approx(4));
        CHECK(both->room_in == doctest::Approx(4));
        // One way only: at one end it may grow, at the other shrink.
        const auto one = span_of(with_room("    lets b move along widthwise by 2mm\n"), "board", Axis::deep);
        REQUIRE(one);
        CHECK(one->room_out == doctest::Approx(2));
        CHECK(one->room_in == doctest::Approx(2));
        // As far as it likes.
        CHECK_FALSE(span_of(with_room("    lets b move along widthwise either way\n"), "board", Axis::deep));
    }

    TEST_CASE("what holds a part counts along the way that changes least") {
        // Two ends, glued to two sides whose grain runs between them: the panel's growth is all its own.
        const std::string frame = "wood oak = red_oak flat\n" +
                                  stick("near of oak", "wide", {0, 0, 0}, {400, 30, 20}) +
                                  stick("far of oak", "wide", {0, 270, 0}, {400, 30, 20}) +
                                  stick("panel of oak", "wide", {100, 30, 0}, {200, 240, 20});
        const std::string joined =
            "join panel.front to near with tongue_and_groove(glued = yes)\n"
            "join panel.back to far with tongue_and_groove(glued = yes)\n";
        const CompiledDesign loose = compile_body(frame + joined);
        CHECK_FALSE(span_of(loose, "panel", Axis::deep));
        const CompiledDesign framed =
            compile_body(frame + joined + stick("stile of oak", "deep", {0, 30, 0}, {40, 240, 20}) +
                         "join stile.front to near with dowels\njoin stile.back to far with dowels\n");
        const auto span = span_of(framed, "panel", Axis::deep);
        REQUIRE(span);
        CHECK(span->growth > 230 * flat_oak);
        CHECK(span->growth < 260 * flat_oak);
        // A stile of the same grain as the panel moves with it.
        const CompiledDesign alike =
            compile_body(frame + joined + stick("stile of oak", "wide", {0, 30, 0}, {40, 240, 20}) +
                         "join stile.front to near with tongue_and_groove(glued = yes)\n"
                         "join stile.back to far with tongue_and_groove(glued = yes)\n");
        const auto same = span_of(alike, "panel", Axis::deep);
        CHECK((!same || same->growth < 30 * flat_oak));
    }

    TEST_CASE("sheet goods and woods that are not known give no span") {
        for (const char* wood : {"birch_plywood", "jarrah"}) {
            const CompiledDesign design = compile_files(
                {{"a.rod",
                  own_joint +
                      "    glue faces\n}\npiece \"Board\" { unit mm; wide = 600mm; deep = 300mm; tall "
                      "= 70mm\nwood oak = " +
                      wood + "\n" + stick("board of oak", "wide", {0, 0, 50}, {600, 300, 20}) +
                      stick("near of oak", "deep", {50, 0, 0}, {40, 300, 50}) +
                      "fasten near.top to board with holder\n}\n"}},
                "a.rod");
            CHECK(held_spans(design.piece(), year).spans.empty());
        }
    }
}
