#include <doctest/doctest.h>

#include <random>

#include "compiler/quantity/format.hpp"

using namespace rodwright;

namespace {

LengthStyle millimetres(const Rational& step) {
    return {LengthUnit::millimetre, step, true};
}

std::string shown(std::string_view text, const LengthStyle& style) {
    return format_quantity(parse_quantity(text).value(), style);
}

}  // namespace

TEST_SUITE("unit/quantity") {
    TEST_CASE("inches as tape fractions") {
        const LengthStyle style;
        CHECK(format_length(inches(13, 8), style) == "1 5/8\"");
        CHECK(format_length(inches(3, 4), style) == "3/4\"");
        CHECK(format_length(inches(24, 32), style) == "3/4\"");
        CHECK(format_length(inches(48), style) == "48\"");
        CHECK(format_length(0, style) == "0\"");
        CHECK(format_length(inches(-1, 8), style) == "-1/8\"");
        CHECK(format_length(inches(-13, 8), style) == "-1 5/8\"");
        LengthStyle bare;
        bare.unit_sign = false;
        CHECK(format_length(inches(13, 8), bare) == "1 5/8");
    }

    TEST_CASE("rounding goes to the nearest step, halves away from zero, and says so") {
        LengthStyle style;
        style.step = ratio(1, 16);
        CHECK(format_length(inches(3, 32), style) == "~1/8\"");
        CHECK(format_length(inches(-3, 32), style) == "~-1/8\"");
        CHECK(format_length(inches(5, 64), style) == "~1/16\"");
        CHECK(format_length(inches(-1, 64), style) == "~0\"");
        CHECK(show_length(inches(5, 64), style).text == "1/16\"");
        CHECK_FALSE(show_length(inches(5, 64), style).exact);
        CHECK(show_length(inches(1, 16), style).exact);
    }

    TEST_CASE("what would be shown as nothing is written exactly") {
        const LengthStyle style;
        CHECK(format_small(0, style) == "0\"");
        CHECK(format_small(inches(1, 32), style) == "1/32\"");
        CHECK(format_small(inches(33, 1000), style) == "~1/32\"");
        CHECK(format_small(inches(1, 1000), style) == "1/1000\"");
        CHECK(format_small(inches(-1, 1000), style) == "-1/1000\"");
        const LengthStyle metric = millimetres(ratio(1, 2));
        CHECK(format_small(ratio(1, 250), metric) == "0.004 mm");
        CHECK(format_small(ratio(1, 3), millimetres(1)) == "1/3 mm");
        // 1234567/10000000 = 0.1234567
        CHECK(format_small(ratio(1234567, 10000000), metric) == "~0.123457 mm");
        CHECK(format_small(ratio(1, 3000000), metric) == "less than 0.000001 mm");
    }

    TEST_CASE("millimetres with the decimals that are needed") {
        CHECK(format_length(19, millimetres(ratio(1, 2))) == "19 mm");
        CHECK(format_length(ratio(39, 2), millimetres(ratio(1, 2))) == "19.5 mm");
        CHECK(format_length(ratio(193, 10), millimetres(ratio(1, 2))) == "~19.5 mm");
        CHECK(format_length(ratio(193, 10), millimetres(1)) == "~19 mm");
        CHECK(format_length(ratio(-1, 2), millimetres(ratio(1, 2))) == "-0.5 mm");
        CHECK(format_length(ratio(77, 4), millimetres(ratio(1, 4))) == "19.25 mm");
        CHECK(format_length(ratio(1, 20), millimetres(ratio(1, 100))) == "0.05 mm");
        CHECK(format_length(ratio(4, 3), millimetres(ratio(1, 3))) == "1 1/3 mm");
    }

    TEST_CASE("other quantities") {
        const LengthStyle inch;
        const LengthStyle mm = millimetres(1);
        CHECK(shown("14deg", inch) == "14°");
        CHECK(shown("1:8", inch) == "1:8");
        CHECK(shown("2:16", inch) == "1:8");
        CHECK(shown("3:2", inch) == "3:2");
        CHECK(shown("8%", inch) == "8%");
        CHECK(shown("12.5%", inch) == "12.5%");
        CHECK(shown("150 lbf", inch) == "150 lbf");
        CHECK(shown("670 N", mm) == "670 N");
        CHECK(shown("16oz", inch) == "1 lb");
        CHECK(shown("500 g", mm) == "0.5 kg");
        CHECK(shown("30min", inch) == "30 min");
        CHECK(shown("90min", inch) == "90 min");
        CHECK(shown("120min", inch) == "2 h");
        CHECK(shown("48h", inch) == "2 days");
        CHECK(shown("24h", inch) == "1 day");
        CHECK(shown("0s", inch) == "0 s");
        CHECK(shown("12.50 USD", inch) == "12.50 USD");
        CHECK(shown("12.505 USD", inch) == "~12.51 USD");
        CHECK(shown("1 JPY", inch) == "1 JPY");
        CHECK(shown("70F", inch) == "70 °F");
        CHECK(shown("20C", mm) == "20 °C");
        CHECK(shown("20C", inch) == "68 °F");
        CHECK(shown("3", inch) == "3");
        CHECK(shown("0.75", inch) == "0.75");
        CHECK(shown("1/3", inch) == "1/3");
        CHECK(shown("4/3", inch) == "1 1/3");
        CHECK(shown("1/700", inch) == "~0.0014");
        CHECK(shown("5:1001", inch) == "~1:200.20");
    }

    TEST_CASE("areas, volumes and compounds in the units of the style") {
        const Quantity inch = parse_quantity("1 in").value();
        const Quantity area = multiply(inch, parse_quantity("3\"").value()).value();
        CHECK(format_quantity(area, {}) == "3 in²");
        CHECK(format_quantity(multiply(area, inch).value(), {}) == "3 in³");
        const Quantity plate = multiply(Quantity::length(20), Quantity::length(30)).value();
        CHECK(format_quantity(plate, millimetres(1)) == "600 mm²");
        const Quantity pressure = divide(parse_quantity("6 lbf").value(), area).value();
        CHECK(format_quantity(pressure, {}) == "2 lbf/in²");
        CHECK(format_quantity(divide(Quantity::number(5), inch).value(), {}) == "5 1/in");
    }

    TEST_CASE("what is shown of random lengths is within half a step and reads back") {
        std::mt19937 random(3);
        for (int i = 0; i < 3000; ++i) {
            const bool metric = i % 2 == 1;
            const LengthStyle style = metric ? millimetres(ratio(1, 10)) : LengthStyle{};
            const Rational value = ratio(random() % 2'000'000, random() % 997 + 1);
            CAPTURE(to_text(value));
            const Shown text = show_length(value, style);
            std::string literal = text.text;
            const std::size_t blank = literal.find(' ');
            if (!metric && blank != std::string::npos) literal[blank] = '-';
            const std::optional<Quantity> back = parse_quantity(literal);
            REQUIRE(back.has_value());
            const Rational half_step = metric ? ratio(1, 20) : inches(1, 64);
            REQUIRE(abs(back->value - value) <= half_step);
            REQUIRE(text.exact == (back->value == value));
        }
    }
}
