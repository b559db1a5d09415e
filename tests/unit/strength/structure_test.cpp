#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/check/strength/assess.hpp"
#include "compiler/check/strength/tell.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

std::string said_of(const CompiledDesign& design) {
    Diagnostics diagnostics;
    const auto made = strength::assess(design.piece(), {}, diagnostics);
    if (made) strength::tell_findings(design.piece(), *made, diagnostics);
    std::string text;
    for (const Diagnostic& each : diagnostics.list())
        text += fmt::format("{} {}\n", info(each.code).code, each.message);
    return text;
}

const std::string wood = "wood oak = red_oak\n";

std::string part(const std::string& head, const std::string& faces) {
    return fmt::format("part {} {{ {} }}\n", head, faces);
}

const std::string leg =
    part("leg of oak, handed wide deep",
         "grain tall; left = piece.left; wide = 60mm; front = piece.front; deep = 60mm; bottom = "
         "piece.bottom; tall = 700mm");
const std::string top =
    part("top of oak",
         "grain wide; left = piece.left; right = piece.right; front = piece.front; back = "
         "piece.back; bottom = leg.top; tall = 25mm");

}  // namespace

TEST_SUITE("unit/strength") {
    TEST_CASE("what carries a load and is joined to nothing is named") {
        CHECK(said_of(compile_body(wood + leg + top + "use table\n")) ==
              "W1306 `top` carries a load, and no joint connects it with the floor\n");
    }

    TEST_CASE("without a load or a use nothing is worked out") {
        Diagnostics diagnostics;
        CHECK_FALSE(strength::assess(compile_body(wood + leg).piece(), {}, diagnostics).has_value());
        CHECK(diagnostics.list().empty());
    }

    TEST_CASE("the examples stand: no finding, whatever is known of their solids") {
        for (const std::string& name : example_names()) {
            CAPTURE(name);
            CHECK(said_of(compile_text(example_text(name))) == "");
        }
    }

    TEST_CASE("twice assessed is the same to the last bit") {
        const CompiledDesign design = compile_text(example_text("chart_shelf"));
        Diagnostics diagnostics;
        const auto once = strength::assess(design.piece(), {}, diagnostics);
        const auto again = strength::assess(design.piece(), {}, diagnostics);
        REQUIRE(once.has_value());
        REQUIRE(again.has_value());
        for (std::size_t i = 0; i < once->verdict.parts.size(); ++i)
            CHECK(once->verdict.parts[i].stress == again->verdict.parts[i].stress);
    }

    TEST_CASE("numbers come with their limit, source, inputs and the word that they are an estimate") {
        const CompiledDesign design = compile_text(example_text("keepers_table"));
        Diagnostics diagnostics;
        const auto made = strength::assess(design.piece(), {}, diagnostics);
        REQUIRE(made.has_value());
        std::vector<Number> numbers;
        strength::tell_numbers(design.piece(), *made, numbers);
        CHECK(numbers.size() > 8);
        for (const Number& number : numbers) {
            CAPTURE(number.title);
            CHECK(number.check == "strength");
            CHECK_FALSE(number.source.empty());
            CHECK_FALSE(number.inputs.empty());
            CHECK(number.assumptions.front() == strength::disclaimer);
        }
    }

    TEST_CASE("a part is a grillage only where it is wide, thin and held away from its middle") {
        using frame::Vec3;
        using strength::lay_out;
        CHECK(lay_out(Vec3(900, 100, 20), {Vec3(10, 5, 0), Vec3(880, 95, 0)}).lines.size() == 1);
        CHECK(lay_out(Vec3(900, 300, 20), {Vec3(0, 150, 0), Vec3(900, 150, 0)}).lines.size() == 1);
        const strength::Layout plate = lay_out(Vec3(900, 300, 20), {Vec3(10, 20, 0), Vec3(880, 280, 0)});
        CHECK(plate.lines == std::vector<double>{20, 150, 280});
        CHECK(plate.width_of(0, 300) == doctest::Approx(85));
        CHECK(plate.width_of(1, 300) == doctest::Approx(130));
        CHECK(plate.stations.front() == 0);
        CHECK(plate.stations.back() == 900);
    }
}
