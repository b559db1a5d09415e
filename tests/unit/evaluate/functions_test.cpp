#include <doctest/doctest.h>

#include <cmath>

#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/evaluate");

namespace {

Rational number(const std::string& expression) {
    const Quantity value = value_of(expression);
    REQUIRE(value.is_number());
    CHECK(value.exact);
    return value.value;
}

Rational length(const std::string& expression) {
    const Quantity value = value_of(expression);
    REQUIRE(value.is_length());
    CHECK(value.exact);
    return value.value;
}

}  // namespace

TEST_CASE("min and max compare inches with millimetres") {
    CHECK(length("min(3/4\", 19mm)") == 19);  // 3/4 in is 19.05 mm
    CHECK(length("max(3/4\", 19mm)") == ratio(1905, 100));
    CHECK(length("max(1mm, 4mm, 2mm, 3mm)") == 4);
    CHECK(number("min(7)") == 7);
}

TEST_CASE("abs turns what is below zero round") {
    CHECK(length("abs(2mm - 5mm)") == 3);
    CHECK(length("abs(5mm - 2mm)") == 3);
}

TEST_CASE("floor, ceil and round go to whole numbers, halves away from zero") {
    CHECK(number("floor(7/2)") == 3);
    CHECK(number("floor(-7/2)") == -4);
    CHECK(number("ceil(7/2)") == 4);
    CHECK(number("ceil(-7/2)") == -3);
    CHECK(number("round(5/2)") == 3);
    CHECK(number("round(-5/2)") == -3);
    CHECK(number("round(2.4)") == 2);
}

TEST_CASE("with a step they go to its multiples") {
    CHECK(length("floor(1.3\", 1/2\")") == inches(1));
    CHECK(length("ceil(1.3\", 1/2\")") == inches(3, 2));
    // 19 mm is 0.748 in: 11.97 sixteenths.
    CHECK(length("round(19mm, 1/16\")") == inches(3, 4));
    CHECK(number("round(17, 5)") == 15);
}

TEST_CASE("roots of squares are exact, of lengths too") {
    CHECK(number("sqrt(9/16)") == ratio(3, 4));
    CHECK(length("sqrt(3\" * 12\")") == inches(6));
    CHECK(length("sqrt(3mm * 3mm + 4mm * 4mm)") == 5);
    const Quantity irrational = value_of("sqrt(2)");
    CHECK_FALSE(irrational.exact);
    CHECK(irrational.to_double() == doctest::Approx(1.41421356237309505));
}

TEST_CASE("trigonometry is exact where its value is a fraction") {
    CHECK(number("sin(30deg)") == ratio(1, 2));
    CHECK(number("sin(210deg)") == ratio(-1, 2));
    CHECK(number("sin(-90deg)") == -1);
    CHECK(number("cos(60deg)") == ratio(1, 2));
    CHECK(number("cos(180deg)") == -1);
    CHECK(number("tan(45deg)") == 1);
    CHECK(number("tan(135deg)") == -1);
    CHECK(number("tan(360deg)") == 0);
}

TEST_CASE("elsewhere it is not, and says so") {
    const Quantity slope = value_of("tan(14deg)");
    CHECK_FALSE(slope.exact);
    CHECK(slope.to_double() == doctest::Approx(0.24932800284318069));
    CHECK(value_of("sin(45deg)").to_double() == doctest::Approx(std::sqrt(0.5)));
    CHECK_FALSE(value_of("cos(45deg) * 10mm").exact);
}

TEST_CASE("atan2 is the angle of a rise over a run") {
    const Quantity angle = value_of("atan2(1\", 8\")");  // a slope of 1:8
    CHECK(angle.dimension == Dimension::of(Base::angle));
    CHECK(angle.to_double() == doctest::Approx(7.1250163489));
    CHECK(value_of("atan2(1, 1)").to_double() == doctest::Approx(45));
    CHECK(value_of("atan2(0, 3)").exact);
}

TEST_CASE("arguments of the wrong kind are refused") {
    CHECK(trouble_with("max(1\", 1)") == "E0207 `max` needs quantities of one kind\n");
    CHECK(trouble_with("abs(none)") == "E0207 `abs` needs a number or a size\n");
    CHECK(trouble_with("floor(1.3\")") ==
          "E0207 `floor` needs a second argument: the step to round a size to\n");
    CHECK(trouble_with("ceil(1\", 0\")") ==
          "E0207 `ceil` needs a step above zero, of the same kind as the value\n");
    CHECK(trouble_with("round(1\", 2)") ==
          "E0207 `round` needs a step above zero, of the same kind as the value\n");
    CHECK(trouble_with("sin(1)") == "E0207 `sin` needs an angle, as in `14deg`\n");
    CHECK(trouble_with("sqrt(2\")") == "E0207 `sqrt` needs a plain number or an area\n");
    CHECK(trouble_with("atan2(1\", 2)") == "E0207 `atan2` needs two quantities of one kind: rise and run\n");
}

TEST_CASE("what has no result is refused") {
    CHECK(trouble_with("sqrt(-1)") == "E0208 `sqrt` of less than zero does not exist\n");
    CHECK(trouble_with("tan(90deg)") == "E0208 `tan` of a right angle does not exist\n");
    CHECK(trouble_with("tan(-90deg)") == "E0208 `tan` of a right angle does not exist\n");
    CHECK(trouble_with("atan2(0, 0)") == "E0208 `atan2` of zero and zero does not exist\n");
}

TEST_CASE("the number of arguments is checked, and names are not taken") {
    CHECK(trouble_with("atan2(1)") == "E0207 `atan2` takes 2 arguments, found 1\n");
    CHECK(trouble_with("abs(1, 2)") == "E0207 `abs` takes 1 argument, found 2\n");
    CHECK(trouble_with("min()") == "E0207 `min` takes 1 to 64 arguments, found 0\n");
    CHECK(trouble_with("abs(x = 1)") == "E0207 arguments of a function have no names\n");
}

TEST_CASE("an unknown function is named, with the one that was meant") {
    const CompiledDesign design = compile_body("param value = sqroot(4)");
    CHECK(design.report() == "E0201 2:15 there is no function `sqroot`\n");
    CHECK(design.help() == "did you mean `sqrt`?");
}

TEST_CASE("the nearest tool is one of the shop's") {
    CHECK(length("nearest chisel to 1/4\"") == 6);  // of the metric ones: 6, then 8
    CHECK(trouble_with("nearest spoon to 1/4\"") == "E0201 the shop has no sizes of `spoon`\n");
    CHECK(trouble_with("nearest chisel to 3") == "E0202 expected a length, found a number\n");
}

TEST_CASE("a size that placement is still to find has no maximum yet") {
    const CompiledDesign design =
        compile_body(stick("a", "wide", {0, 0, 0}, {10, 10, 10}) +
                     "part b { grain wide; left = max(a.right, a.left); front = 0; bottom = 0; wide = 1mm; "
                     "deep = 1mm; tall = 1mm }");
    CHECK(design.report().rfind("E0303 4:29 `max` of a size that is not known before placement\n", 0) == 0);
}

TEST_SUITE_END();
