#include <doctest/doctest.h>

#include <string>

#include "compiler/limits.hpp"
#include "compiler/quantity/quantity.hpp"

using namespace rodwright;

namespace {

Quantity read(std::string_view text) {
    const std::optional<Quantity> quantity = parse_quantity(text);
    INFO(text);
    REQUIRE(quantity.has_value());
    return *quantity;
}

struct LengthCase {
    std::string_view text;
    Rational millimetres;
};

}  // namespace

TEST_SUITE("unit/quantity") {
    TEST_CASE("lengths in every spelling") {
        const LengthCase cases[] = {
            {"3\"", inches(3)},       {"3/4\"", inches(3, 4)},       {"1-5/8\"", inches(13, 8)},
            {"3/4 in", inches(3, 4)}, {"0.75in", inches(3, 4)},      {"4'", inches(48)},
            {"4.5'", inches(54)},     {"4'2\"", inches(50)},         {"4' 2\"", inches(50)},
            {"4'-2\"", inches(50)},   {"4'2-1/2\"", inches(101, 2)}, {"4'-2-1/2\"", inches(101, 2)},
            {"2 ft", inches(24)},     {"19mm", Rational(19)},        {"19.5 mm", ratio(39, 2)},
            {"12cm", Rational(120)},  {"1.25 m", Rational(1250)},
        };
        for (const LengthCase& each : cases) {
            CAPTURE(each.text);
            const Quantity quantity = read(each.text);
            CHECK(quantity.is_length());
            CHECK(quantity.value == each.millimetres);
            CHECK(quantity.exact);
        }
    }

    TEST_CASE("plain numbers") {
        CHECK(read("3").is_number());
        CHECK(read("3/4").value == ratio(3, 4));
        CHECK(read("1-5/8").value == ratio(13, 8));
        CHECK(read("0.75").value == ratio(3, 4));
        CHECK(read("010").value == 10);
    }

    TEST_CASE("slopes and percentages remember how they were meant") {
        CHECK(read("1:8").value == ratio(1, 8));
        CHECK(read("1:8").dimension.ratio == RatioKind::slope);
        CHECK(read("1.5:6").value == ratio(1, 4));
        CHECK(read("8%").value == ratio(8, 100));
        CHECK(read("8 %").dimension.ratio == RatioKind::percentage);
    }

    TEST_CASE("times, angles, forces, masses") {
        CHECK(read("30min").value == 1800);
        CHECK(read("2 h").value == 7200);
        CHECK(read("1day").value == 86400);
        CHECK(read("14deg").dimension == Dimension::of(Base::angle));
        CHECK(read("670 N").value == 670);
        CHECK(read("2 kN").value == 2000);
        CHECK(read("500 g").value == ratio(1, 2));
        CHECK(read("16oz").value == read("1 lb").value);
    }

    TEST_CASE("money keeps its currency") {
        CHECK(read("12.50 USD").value == ratio(25, 2));
        CHECK(read("12 USD").dimension == read("1USD").dimension);
        CHECK(read("12 USD").dimension != read("12 EUR").dimension);
        for (const char* code :
             {"USD", "EUR", "GBP", "CAD", "AUD", "NZD", "JPY", "CHF", "SEK", "NOK", "DKK"}) {
            CHECK(dimension_name(read(std::string("1 ") + code).dimension) ==
                  std::string("money in ") + code);
        }
    }

    TEST_CASE("what is not one number is refused") {
        for (const char* text :
             {"",      " ",     "-3",    "3 ",    " 3",     "3  in",   "3inch",   "3 into", "in",
              "3,5mm", ".5",    "5.",    "1/",    "/2",     "3/0",     "1-9/8\"", "1-8/8",  "5-3",
              "1.5/2", "1/2.5", "4'2",   "4' ",   "4'2'",   "4.5'2\"", "1/2'3\"", "4'2in",  "1:0",
              "1:",    ":8",    "1:8:2", "1/2:8", "1:8 in", "1_000",   "0x10",    "1e3",    "3\xE2\x80\x9D",
              "3 IN"}) {
            CAPTURE(text);
            CHECK_FALSE(parse_quantity(text).has_value());
        }
    }

    TEST_CASE("a number may have as many digits as the limit, not more") {
        const std::string most(limits::number_digits, '7');
        CHECK(read(most).value == Rational(most));
        CHECK_FALSE(parse_quantity(most + "7").has_value());
        const std::string half(limits::number_digits / 2, '7');
        CHECK(read(half + "." + half).value > 1);
        CHECK_FALSE(parse_quantity(half + ".7" + half).has_value());
    }

    TEST_CASE("every unit word is read") {
        const std::string words = unit_words() + ", ";
        std::size_t count = 0;
        for (std::size_t start = 0; start < words.size(); ++count) {
            const std::size_t end = words.find(", ", start);
            read("2" + words.substr(start, end - start));
            read("2 " + words.substr(start, end - start));
            start = end + 2;
        }
        CHECK(count == 33);  // 19 units, percent, two temperatures, 11 currencies
    }
}
