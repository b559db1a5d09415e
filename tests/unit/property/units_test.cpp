#include <doctest/doctest.h>

#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"
#include "tests/support/piece_text.hpp"
#include "tests/unit/property/rewrite.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/property");

namespace {

// `42`, `3/4` or `29-1/2`.
Rational read_inches(const std::string& text) {
    const std::size_t dash = text.find('-');
    const std::size_t slash = text.find('/');
    if (slash == std::string::npos) return ratio(std::stol(text));
    const std::size_t start = dash == std::string::npos ? 0 : dash + 1;
    const Rational part =
        ratio(std::stol(text.substr(start, slash - start)), std::stol(text.substr(slash + 1)));
    return dash == std::string::npos ? part : Rational(part + std::stol(text.substr(0, dash)));
}

// A rational whose denominator has no primes but 2 and 5, with all of its decimals.
std::string exact_decimals(const Rational& value) {
    Rational scaled = value;
    std::size_t places = 0;
    for (; scaled.get_den() != 1; ++places) scaled *= 10;
    std::string digits = scaled.get_num().get_str();
    while (digits.size() <= places) digits.insert(0, "0");
    return places == 0
               ? digits
               : digits.substr(0, digits.size() - places) + "." + digits.substr(digits.size() - places);
}

// 1 in is 25.4 mm, exactly (ISO 31-1, NIST SP 811).
std::string in_millimetres(const std::string& number) {
    if (number.back() != '"') return number;
    const Rational millimetres = read_inches(number.substr(0, number.size() - 1)) * ratio(254, 10);
    return exact_decimals(millimetres) + "mm";
}

// `420mm` or `1.5mm` as a fraction of an inch: x mm is 5 x / 127 in.
std::string in_inches(const std::string& number) {
    if (!number.ends_with("mm")) return number;
    std::string digits = number.substr(0, number.size() - 2);
    long tenths = 1;
    if (const std::size_t point = digits.find('.'); point != std::string::npos) {
        for (std::size_t i = point + 1; i < digits.size(); ++i) tenths *= 10;
        digits.erase(point, 1);
    }
    const Rational inches = ratio(std::stol(digits) * 5, tenths * 127);
    return inches.get_num().get_str() + "/" + inches.get_den().get_str() + "\"";
}

}  // namespace

TEST_CASE("the rewriting itself, by hand") {
    CHECK(in_millimetres("29-1/2\"") == "749.3mm");
    CHECK(in_millimetres("1/64\"") == "0.396875mm");
    CHECK(in_millimetres("9") == "9");
    CHECK(in_inches("254mm") == "10/1\"");
    CHECK(in_inches("1.5mm") == "15/254\"");
}

TEST_CASE("an example in inches and its twin in millimetres are one piece") {
    for (const char* name : {"chart_shelf", "keepers_table"}) {
        CAPTURE(std::string(name));
        const std::string text = example_text(name);
        const std::string twin = with_numbers(text, in_millimetres);
        REQUIRE(twin.find('"', twin.find("unit in")) > twin.find("mm", twin.find("unit in")));
        CHECK(piece_text(compile_text(twin).piece()) == piece_text(compile_text(text).piece()));
    }
}

TEST_CASE("an example in millimetres and its twin in inches are one piece") {
    const std::string text = example_text("instrument_tray");
    const std::string twin = with_numbers(text, in_inches);
    REQUIRE(twin.find("2100/127\"") != std::string::npos);  // the length, 420 mm
    CHECK(piece_text(compile_text(twin).piece()) == piece_text(compile_text(text).piece()));
}

TEST_CASE("the unit in which a piece is shown moves nothing") {
    const auto box = [](const std::string& unit) {
        return compile_text("piece \"Box\" { unit " + unit + "\nwide = 10\"; deep = 200mm; tall = 1'\n" +
                            stick("a, handed wide", "tall", {10, 20, 0}, {30, 40, 250},
                                  "bore(diameter = 1/4\", deep = 10mm, from_end = 3\") on right face") +
                            "}\n");
    };
    CHECK(piece_text(box("in to 1/64").piece(), false) == piece_text(box("mm to 1/10").piece(), false));
}

TEST_SUITE_END();
