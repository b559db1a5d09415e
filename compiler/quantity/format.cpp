#include "compiler/quantity/format.hpp"

#include "compiler/quantity/units.hpp"

namespace rodwright {
namespace {

Rational power_of_ten(unsigned exponent) {
    mpz_class value;
    mpz_ui_pow_ui(value.get_mpz_t(), 10, exponent);
    return Rational(value);
}

Rational nearest_multiple(const Rational& value, const Rational& step) {
    const Rational steps = value / step;
    return round(steps) * step;
}

// How many decimals write `value` exactly; empty if none do or more than `most`.
std::optional<unsigned> decimals_needed(const Rational& value, unsigned most) {
    for (unsigned decimals = 0; decimals <= most; ++decimals) {
        const Rational scaled = value * power_of_ten(decimals);
        if (scaled.get_den() == 1) return decimals;
    }
    return std::nullopt;
}

// `value`, a multiple of 10^-decimals, with exactly that many decimals.
std::string decimal_text(const Rational& value, unsigned decimals) {
    const Rational scaled = abs(value) * power_of_ten(decimals);
    std::string digits = scaled.get_num().get_str();
    if (digits.size() <= decimals) digits.insert(0, decimals + 1 - digits.size(), '0');
    if (decimals > 0) digits.insert(digits.size() - decimals, ".");
    return (value < 0 ? "-" : "") + digits;
}

// Lowest terms, the whole part set off by a blank: 1 5/8, -1/8, 0.
std::string mixed_text(const Rational& value) {
    const Rational size = abs(value);
    const Rational whole = floor(size);
    const Rational part = size - whole;
    std::string text = value < 0 ? "-" : "";
    if (whole != 0 || part == 0) text += whole.get_str();
    if (whole != 0 && part != 0) text += ' ';
    if (part != 0) text += part.get_str();
    return text;
}

std::string millimetre_text(const Rational& value) {
    constexpr unsigned most_decimals = 6;
    const std::optional<unsigned> decimals = decimals_needed(value, most_decimals);
    return decimals ? decimal_text(value, *decimals) : mixed_text(value);
}

// At most `decimals` decimals, none that is not needed, `~` in front where that rounds.
std::string rounded_text(const Rational& value, unsigned decimals) {
    const Rational nearest = nearest_multiple(value, 1 / power_of_ten(decimals));
    const std::string text = decimal_text(nearest, decimals_needed(nearest, decimals).value_or(decimals));
    return (nearest == value ? "" : "~") + text;
}

constexpr unsigned shown_decimals = 2;

// Short decimals as such, other small fractions as fractions (1/3), the rest rounded.
std::string number_text(const Rational& value) {
    constexpr unsigned short_decimals = 3;
    constexpr long small_denominator = 64;
    if (decimals_needed(value, short_decimals)) return rounded_text(value, short_decimals);
    if (value.get_den() <= small_denominator) return mixed_text(value);
    return rounded_text(value, short_decimals + 1);
}

// Rise over run in lowest terms, or 1 over a rounded run where the terms would not be read.
std::string slope_text(const Rational& value) {
    constexpr long readable = 1000;
    if (abs(value.get_num()) <= readable && value.get_den() <= readable) {
        return value.get_num().get_str() + ":" + value.get_den().get_str();
    }
    const Rational run = 1 / abs(value);
    return std::string("~") + (value < 0 ? "-" : "") +
           "1:" + decimal_text(nearest_multiple(run, ratio(1, 100)), shown_decimals);
}

std::string ratio_text(const Quantity& quantity) {
    switch (quantity.dimension.ratio) {
        case RatioKind::slope:
            return slope_text(quantity.value);
        case RatioKind::percentage:
            return rounded_text(quantity.value * 100, shown_decimals) + "%";
        case RatioKind::number:
            break;
    }
    return number_text(quantity.value);
}

// In the largest unit that is whole, so that 90 min does not become 1.5 h.
std::string time_text(const Rational& seconds) {
    for (const std::string_view word : {"day", "h", "min"}) {
        const Rational count = seconds / find_unit(word)->factor();
        if (count == 0 || count.get_den() != 1) continue;
        const bool plural = word == "day" && count != 1;
        return count.get_str() + " " + std::string(word) + (plural ? "s" : "");
    }
    return rounded_text(seconds, shown_decimals) + " s";
}

std::string money_text(const Quantity& quantity) {
    const Currency& unit = currency(quantity.dimension.currency);
    const Rational nearest = nearest_multiple(quantity.value, 1 / power_of_ten(unit.digits));
    return (nearest == quantity.value ? "" : "~") + decimal_text(nearest, unit.digits) + " " +
           std::string(unit.code);
}

std::string temperature_text(const Rational& kelvin, LengthUnit system) {
    const Unit& unit = *find_unit(system == LengthUnit::inch ? "F" : "C");
    const Rational degrees = kelvin / unit.factor() - unit.offset();
    return rounded_text(degrees, shown_decimals) + " °" + std::string(unit.word);
}

struct Symbol {
    std::string text;
    Rational factor;  // base units
};

Symbol unit_symbol(std::string_view word) {
    return {std::string(word), find_unit(word)->factor()};
}

Symbol base_symbol(Base base, const Dimension& dimension, LengthUnit system) {
    const bool inch = system == LengthUnit::inch;
    switch (base) {
        case Base::length:
            return unit_symbol(inch ? "in" : "mm");
        case Base::angle:
            return {"°", 1};
        case Base::mass:
            return unit_symbol(inch ? "lb" : "kg");
        case Base::force:
            return unit_symbol(inch ? "lbf" : "N");
        case Base::time:
            return unit_symbol("s");
        case Base::temperature:
            return {"K", 1};
        case Base::money:
            return {std::string(currency(dimension.currency).code), 1};
        case Base::count_:
            break;
    }
    return {"", 1};
}

// The symbols with powers of that sign, as in lbf·in; `value` goes from base units to theirs.
std::string symbols(const Dimension& dimension, LengthUnit system, int sign, Rational& value) {
    constexpr std::array<std::string_view, 5> exponent = {"", "", "²", "³", "⁴"};
    std::string text;
    for (std::size_t base = 0; base < dimension.power.size(); ++base) {
        const int power = sign * dimension.power[base];
        if (power <= 0) continue;
        const Symbol symbol = base_symbol(static_cast<Base>(base), dimension, system);
        const Rational scale = sign > 0 ? Rational(1 / symbol.factor) : symbol.factor;
        for (int i = 0; i < power; ++i) value *= scale;
        if (!text.empty()) text += "·";
        text += symbol.text;
        text += exponent[static_cast<std::size_t>(power)];
    }
    return text;
}

std::string compound_text(const Quantity& quantity, LengthUnit system) {
    Rational value = quantity.value;
    const std::string above = symbols(quantity.dimension, system, 1, value);
    const std::string below = symbols(quantity.dimension, system, -1, value);
    const std::string blank = above == "°" ? "" : " ";
    return rounded_text(value, shown_decimals) + blank + (above.empty() ? "1" : above) +
           (below.empty() ? "" : "/" + below);
}

}  // namespace

namespace {

Rational in_unit(const Rational& millimetres, LengthUnit unit) {
    return millimetres / base_symbol(Base::length, {}, unit).factor;
}

std::string with_sign(std::string number, const LengthStyle& style) {
    if (!style.unit_sign) return number;
    return number + (style.unit == LengthUnit::inch ? "\"" : " mm");
}

std::string exact_text(const Rational& value, LengthUnit unit) {
    return unit == LengthUnit::inch ? mixed_text(value) : millimetre_text(value);
}

}  // namespace

Shown show_length(const Rational& millimetres, const LengthStyle& style) {
    const Rational value = in_unit(millimetres, style.unit);
    const Rational nearest = nearest_multiple(value, style.step);
    return {with_sign(exact_text(nearest, style.unit), style), nearest == value};
}

std::string format_length(const Rational& millimetres, const LengthStyle& style) {
    const Shown shown = show_length(millimetres, style);
    return (shown.exact ? "" : "~") + shown.text;
}

std::string format_small(const Rational& millimetres, const LengthStyle& style) {
    constexpr unsigned decimals = 6;
    const Rational value = in_unit(millimetres, style.unit);
    if (value == 0 || nearest_multiple(value, style.step) != 0) return format_length(millimetres, style);
    if (value.get_den() <= power_of_ten(decimals)) return with_sign(exact_text(value, style.unit), style);
    const Rational least = 1 / power_of_ten(decimals);
    if (abs(value) < least) return "less than " + with_sign(decimal_text(least, decimals), style);
    return with_sign(rounded_text(value, decimals), style);
}

std::string format_quantity(const Quantity& quantity, const LengthStyle& style) {
    const Dimension& dimension = quantity.dimension;
    if (dimension.dimensionless()) return ratio_text(quantity);
    if (quantity.is_length()) return format_length(quantity.value, style);
    if (dimension == Dimension::of(Base::time)) return time_text(quantity.value);
    if (dimension == Dimension::of(Base::temperature)) return temperature_text(quantity.value, style.unit);
    Dimension one_price = Dimension::of(Base::money);
    one_price.currency = dimension.currency;
    if (dimension == one_price) return money_text(quantity);
    return compound_text(quantity, style.unit);
}

}  // namespace rodwright
