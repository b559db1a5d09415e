#include <doctest/doctest.h>

#include "compiler/quantity/format.hpp"

using namespace rodwright;

namespace {

Rational base_units(std::string_view text) {
    return parse_quantity(text).value().value;
}

// A decimal as the source prints it, over a power of ten.
Rational decimal(const char* digits, unsigned decimals) {
    mpz_class scale;
    mpz_ui_pow_ui(scale.get_mpz_t(), 10, decimals);
    Rational value(mpz_class(digits), scale);
    value.canonicalize();
    return value;
}

}  // namespace

TEST_SUITE("reference/quantity") {
    TEST_CASE("lengths") {
        // NIST SP 811 (2008), Appendix B.8: inch 2.54 E-02 m and foot 3.048 E-01 m, both exact.
        CHECK(base_units("1 in") == decimal("254", 1));
        CHECK(base_units("1 ft") == decimal("3048", 1));
        CHECK(base_units("1'") == decimal("3048", 1));
        // By arithmetic from the inch: 25.4/64 mm = 127/320 mm.
        CHECK(base_units("1/64\"") == ratio(127, 320));
        // SI brochure: centi and milli.
        CHECK(base_units("1 m") == 1000);
        CHECK(base_units("1 cm") == 10);
    }

    TEST_CASE("masses and forces") {
        // NIST SP 811, Appendix B.8: pound (avoirdupois) 4.535 923 7 E-01 kg, exact.
        CHECK(base_units("1 lb") == decimal("45359237", 8));
        // NIST SP 811, Appendix B.8: ounce (avoirdupois) 2.834 952 E-02 kg, a rounded value; 1/16 lb.
        CHECK(abs(base_units("1 oz") - decimal("2834952", 8)) < decimal("5", 9));
        // NIST SP 811, Appendix B.8: pound-force 4.448 222 N, exactly 4.448 221 615 260 5 N.
        CHECK(base_units("1 lbf") == decimal("44482216152605", 13));
        // Standard gravity 9.806 65 m/s^2 (3rd CGPM, 1901): one pound-force is one pound times it.
        CHECK(base_units("1 lbf") == base_units("1 lb") * decimal("980665", 5));
    }

    TEST_CASE("times") {
        // NIST SP 811, Table 6: minute 60 s, hour 3600 s, day 86 400 s.
        CHECK(base_units("1 min") == 60);
        CHECK(base_units("1 h") == 3600);
        CHECK(base_units("1 day") == 86400);
    }

    TEST_CASE("temperatures") {
        // NIST SP 811, Appendix B.8: T/K = (t/F + 459.67)/1.8 and T/K = t/C + 273.15.
        CHECK(base_units("70F") == (decimal("7000", 2) + decimal("45967", 2)) / decimal("18", 1));
        CHECK(base_units("0C") == decimal("27315", 2));
        // Freezing and boiling point of water on both scales (common knowledge).
        CHECK(base_units("32F") == base_units("0C"));
        CHECK(base_units("212F") == base_units("100C"));
        // 70 F = (70 - 32)/1.8 C = 21.11... C
        const LengthStyle metric{LengthUnit::millimetre, 1, true};
        CHECK(format_quantity(parse_quantity("70F").value(), metric) == "~21.11 °C");
    }

    TEST_CASE("minor units of currencies") {
        // ISO 4217, list one: two digits for USD, EUR and SEK, none for JPY.
        CHECK(format_quantity(parse_quantity("7 USD").value(), {}) == "7.00 USD");
        CHECK(format_quantity(parse_quantity("7 EUR").value(), {}) == "7.00 EUR");
        CHECK(format_quantity(parse_quantity("7 SEK").value(), {}) == "7.00 SEK");
        CHECK(format_quantity(parse_quantity("7 JPY").value(), {}) == "7 JPY");
    }
}
