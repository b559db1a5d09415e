// Quantities: an exact rational number with a dimension.
//
// Values are held in one base unit for each dimension: millimetre, degree, kilogram, newton, second, kelvin
// and the currency itself. Slopes (1:8) and percentages are plain ratios that remember how they were meant:
// they multiply anything like a number, but an 8 % is not added to a 3.
#pragma once

#include <array>
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "compiler/quantity/rational.hpp"

namespace rodwright {

enum class Base : std::uint8_t { length, angle, mass, force, time, temperature, money, count_ };

// How a dimensionless value was meant.
enum class RatioKind : std::uint8_t { number, slope, percentage };

struct Dimension {
    std::array<std::int8_t, static_cast<std::size_t>(Base::count_)> power{};
    RatioKind ratio = RatioKind::number;
    std::uint8_t currency = 0;  // index in the unit table's currencies, 0 where there is no money

    bool dimensionless() const;
    friend bool operator==(const Dimension&, const Dimension&) = default;

    static Dimension of(Base base);
    static Dimension number() { return {}; }
};

// "length", "area", "slope", "force per length", ... as a maker would say it.
std::string dimension_name(const Dimension& dimension);

struct Quantity {
    Rational value;  // in base units
    Dimension dimension;
    bool exact = true;  // false if a root or trigonometry went into it

    static Quantity number(Rational value) { return {std::move(value), Dimension::number(), true}; }
    static Quantity length(Rational millimetres) {
        return {std::move(millimetres), Dimension::of(Base::length), true};
    }
    bool is_length() const { return dimension == Dimension::of(Base::length); }
    bool is_number() const { return dimension == Dimension::number(); }
    double to_double() const { return value.get_d(); }
    friend bool operator==(const Quantity&, const Quantity&) = default;
};

inline Rational inches(long numerator, long denominator = 1) {
    return ratio(numerator * 127, denominator * 5);
}

// Arithmetic. Empty where the dimensions do not allow it (add, subtract, compare) or the answer does not
// exist (division by zero). `power_out_of_range` cannot happen: products past a power of 4 are empty too.
std::optional<Quantity> add(const Quantity& a, const Quantity& b);
std::optional<Quantity> subtract(const Quantity& a, const Quantity& b);
std::optional<Quantity> multiply(const Quantity& a, const Quantity& b);
std::optional<Quantity> divide(const Quantity& a, const Quantity& b);
std::optional<std::strong_ordering> compare(const Quantity& a, const Quantity& b);
Quantity negate(const Quantity& a);

// Reads a number as rod.ebnf writes it, with its unit: `1-5/8"`, `4'2-1/2"`, `19mm`, `14deg`, `1:8`, `150
// lbf`. Empty if `text` is not one whole number, or is too long (limits::number_digits).
std::optional<Quantity> parse_quantity(std::string_view text);

// The unit words that parse_quantity knows, in the order of units.def.
std::string unit_words();

}  // namespace rodwright
