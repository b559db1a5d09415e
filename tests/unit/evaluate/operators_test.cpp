#include <doctest/doctest.h>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/evaluate");

namespace {

Rational plain(const std::string& expression) {
    const Quantity value = value_of(expression);
    REQUIRE(value.is_number());
    return value.value;
}

Rational millimetres(const std::string& expression) {
    const Quantity value = value_of(expression);
    REQUIRE(value.is_length());
    return value.value;
}

bool holds(const std::string& condition) {
    return plain("if " + condition + " then 1 else 0") == 1;
}

}  // namespace

TEST_CASE("products bind before sums, and equals go left to right") {
    CHECK(plain("2 + 3 * 4") == 14);
    CHECK(plain("(2 + 3) * 4") == 20);
    CHECK(plain("10 - 4 - 3") == 3);
    CHECK(plain("12 / 2 / 3") == 2);
    CHECK(plain("-2 * 3") == -6);
    CHECK(plain("4 - -3") == 7);
}

TEST_CASE("lengths are exact in both units together") {
    CHECK(millimetres("1/64\"") == ratio(127, 320));
    CHECK(millimetres("1-5/8\" - 1/8\"") == inches(3, 2));
    CHECK(millimetres("1\" + 1mm") == ratio(264, 10));
    CHECK(millimetres("4'2-1/2\"") == inches(101, 2));
    CHECK(millimetres("(1\" / 3) * 3") == inches(1));
    CHECK(millimetres("0.1mm + 0.2mm") == ratio(3, 10));
}

TEST_CASE("dimensions multiply and divide") {
    CHECK(plain("3\" / 25.4mm") == 3);
    CHECK(dimension_name(value_of("2\" * 3\"").dimension) == "area");
    CHECK(value_of("2mm * 3mm").value == 6);
    CHECK(millimetres("2mm * 3mm / 2mm") == 3);
    CHECK(value_of("1 / 4mm * 4mm").is_number());
}

TEST_CASE("a slope and a percentage multiply like numbers") {
    CHECK(millimetres("16mm * 1:8") == 2);
    CHECK(millimetres("8% * 100mm") == 8);
}

TEST_CASE("quantities of different kind are not added") {
    CHECK(trouble_with("1\" + 3") == "E0202 cannot add a length and a number\n");
    CHECK(trouble_with("14deg - 1mm") == "E0202 cannot subtract an angle and a length\n");
    CHECK(trouble_with("8% + 3") == "E0202 cannot add a percentage and a number\n");
    CHECK(trouble_with("1lbf + 1lb") == "E0202 cannot add a force and a mass\n");
    CHECK(trouble_with("none + 1") == "E0202 cannot add `none` and a number\n");
    CHECK(compile_body("param value = 3 + 1\"").help() == "a length needs a unit, as in `3/4\"` or `19mm`");
}

TEST_CASE("both operands are pointed at") {
    const CompiledDesign design = compile_body("param value = 1\" + 3");
    const Diagnostic& diagnostic = design.compilation().diagnostics.list().front();
    const SourceManager& sources = *design.compilation().sources;
    REQUIRE(diagnostic.labels.size() == 2);
    CHECK(sources.text(diagnostic.labels[0].span) == "1\"");
    CHECK(diagnostic.labels[0].text == "this is a length");
    CHECK(sources.text(diagnostic.labels[1].span) == "3");
    CHECK(diagnostic.labels[1].text == "this is a number");
}

TEST_CASE("comparisons are exact") {
    CHECK(holds("3/4\" < 19.051mm"));
    CHECK(holds("3/4\" == 19.05mm"));
    CHECK(holds("3/4\" != 19mm"));
    CHECK(holds("1\" >= 25.4mm and 1\" <= 25.4mm"));
    CHECK_FALSE(holds("1\" > 25.4mm"));
    CHECK_FALSE(holds("1/3 == 0.333333"));
}

TEST_CASE("zero compares without a unit, nothing else does") {
    CHECK(holds("1\" > 0"));
    CHECK(trouble_with("if 1\" > 1 then 1 else 0") == "E0202 cannot compare a length and a number\n");
    CHECK(trouble_with("if 1deg > 1mm then 1 else 0") == "E0202 cannot compare an angle and a length\n");
}

TEST_CASE("none equals itself only") {
    CHECK(holds("none == none"));
    CHECK_FALSE(holds("1 == none"));
    CHECK(holds("1 != none"));
    CHECK(trouble_with("if none < 1 then 1 else 0") == "E0202 cannot compare `none` and a number\n");
}

TEST_CASE("and, or and not, and before or") {
    CHECK(holds("not 1 > 2"));
    CHECK(holds("1 < 2 or 1 > 2 and 1 > 2"));
    CHECK_FALSE(holds("(1 < 2 or 1 > 2) and 1 > 2"));
}

TEST_CASE("the second side is not asked where the first decides") {
    CHECK_FALSE(holds("1 > 2 and 1 / 0 > 1"));
    CHECK(holds("1 < 2 or 1 / 0 > 1"));
    CHECK(trouble_with("if 1 < 2 and 1 / 0 > 1 then 1 else 0") == "E0208 division by zero\n");
}

TEST_CASE("the branch that is not taken is not asked") {
    CHECK(plain("if 1 < 2 then 5 else 1 / 0") == 5);
    CHECK(trouble_with("if 1 > 2 then 5 else 1 / 0") == "E0208 division by zero\n");
}

TEST_CASE("a condition is a comparison") {
    CHECK(trouble_with("if 3 then 1 else 0") == "E0213 expected a comparison, found a number\n");
    CHECK(trouble_with("if 1 < 2 and 3 then 1 else 0") == "E0213 expected a comparison, found a number\n");
    CHECK(trouble_with("-none") == "E0213 `-` does not go with `none`\n");
}

TEST_CASE("numbers that outgrow the limit are an error, not a wait") {
    const auto squared = [](int times) {
        std::string text = "let a0 = 1234567890123456789012345678901234567890\n";
        for (int i = 1; i <= times; ++i) {
            const std::string before = "a" + std::to_string(i - 1);
            text += "let a" + std::to_string(i) + " = " + before + " * " + before + "\n";
        }
        return compile_body(text + "param value = a" + std::to_string(times) + " / a0");
    };
    // 130 bits squared five times are some 4155: past 4096.
    CHECK(squared(4).report() == "");
    const CompiledDesign design = squared(8);
    CHECK(design.report().find("E0208 7:10 the result is too large to hold\n") == 0);
    CHECK_FALSE(design.compilation().piece.has_value());
}

TEST_SUITE_END();
