#include <algorithm>

#include "compiler/limits.hpp"
#include "compiler/quantity/units.hpp"

namespace rodwright {
namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool all_digits(std::string_view text) {
    return !text.empty() && std::ranges::all_of(text, is_digit);
}

std::optional<Rational> parse_whole(std::string_view text) {
    if (!all_digits(text)) return std::nullopt;
    return Rational(std::string(text), 10);
}

// 3, 0.75
std::optional<Rational> parse_decimal(std::string_view text) {
    const std::size_t point = text.find('.');
    if (point == std::string_view::npos) return parse_whole(text);
    const std::string_view whole = text.substr(0, point);
    const std::string_view decimals = text.substr(point + 1);
    if (!all_digits(whole) || !all_digits(decimals)) return std::nullopt;
    mpz_class scale;
    mpz_ui_pow_ui(scale.get_mpz_t(), 10, decimals.size());
    Rational value(mpz_class(std::string(whole).append(decimals), 10), scale);
    value.canonicalize();
    return value;
}

// 3/4
std::optional<Rational> parse_fraction(std::string_view text) {
    const std::size_t bar = text.find('/');
    if (bar == std::string_view::npos) return std::nullopt;
    const std::optional<Rational> above = parse_whole(text.substr(0, bar));
    const std::optional<Rational> below = parse_whole(text.substr(bar + 1));
    if (!above || !below || *below == 0) return std::nullopt;
    return Rational(*above / *below);
}

// 3, 0.75, 3/4, 1-5/8. A mixed number whose fraction is not below 1 was rather meant as a subtraction.
std::optional<Rational> parse_amount(std::string_view text) {
    const std::size_t dash = text.find('-');
    if (dash == std::string_view::npos) {
        return text.find('/') == std::string_view::npos ? parse_decimal(text) : parse_fraction(text);
    }
    const std::optional<Rational> whole = parse_whole(text.substr(0, dash));
    const std::optional<Rational> part = parse_fraction(text.substr(dash + 1));
    if (!whole || !part || *part >= 1) return std::nullopt;
    return Rational(*whole + *part);
}

std::optional<Quantity> parse_slope(std::string_view rise, std::string_view run) {
    const std::optional<Rational> above = parse_decimal(rise);
    const std::optional<Rational> below = parse_decimal(run);
    if (!above || !below || *below == 0) return std::nullopt;
    Quantity slope = Quantity::number(*above / *below);
    slope.dimension.ratio = RatioKind::slope;
    return slope;
}

// `rest` is what follows the foot mark: 2-1/2", -2-1/2" or a blank and 2".
std::optional<Quantity> parse_feet_inches(std::string_view feet, std::string_view rest) {
    if (rest.starts_with(' ') || rest.starts_with('-')) rest.remove_prefix(1);
    if (!rest.ends_with('"')) return std::nullopt;
    rest.remove_suffix(1);
    const std::optional<Rational> whole = parse_whole(feet);
    const std::optional<Rational> more = parse_amount(rest);
    if (!whole || !more) return std::nullopt;
    return Quantity::length(*whole * find_unit("ft")->factor() + *more * find_unit("in")->factor());
}

std::optional<Quantity> parse_with_unit(std::string_view text) {
    const std::size_t end = std::min(text.find_first_not_of("0123456789./-"), text.size());
    const std::optional<Rational> amount = parse_amount(text.substr(0, end));
    if (!amount) return std::nullopt;
    std::string_view word = text.substr(end);
    if (word.empty()) return Quantity::number(*amount);
    if (word.starts_with(' ')) word.remove_prefix(1);
    const Unit* unit = find_unit(word);
    if (unit == nullptr) return std::nullopt;
    return Quantity{(*amount + unit->offset()) * unit->factor(), unit->dimension, true};
}

}  // namespace

std::optional<Quantity> parse_quantity(std::string_view text) {
    const auto digits = static_cast<std::size_t>(std::ranges::count_if(text, is_digit));
    if (digits > limits::number_digits) return std::nullopt;
    const std::size_t colon = text.find(':');
    if (colon != std::string_view::npos) return parse_slope(text.substr(0, colon), text.substr(colon + 1));
    const std::size_t foot = text.find('\'');
    if (foot != std::string_view::npos && foot + 1 < text.size()) {
        return parse_feet_inches(text.substr(0, foot), text.substr(foot + 1));
    }
    return parse_with_unit(text);
}

std::string unit_words() {
    std::string words;
    for (const Unit& unit : units()) {
        if (!words.empty()) words += ", ";
        words += unit.word;
    }
    return words;
}

}  // namespace rodwright
