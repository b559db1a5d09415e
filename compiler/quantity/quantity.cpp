#include "compiler/quantity/quantity.hpp"

#include "compiler/limits.hpp"

namespace rodwright {
namespace {

constexpr int highest_power = 4;
constexpr auto money = static_cast<std::size_t>(Base::money);

bool within_limits(const Rational& value) {
    return mpz_sizeinbase(value.get_num_mpz_t(), 2) <= limits::value_bits &&
           mpz_sizeinbase(value.get_den_mpz_t(), 2) <= limits::value_bits;
}

std::optional<Quantity> checked(Rational value, const Dimension& dimension, bool exact) {
    if (!within_limits(value)) return std::nullopt;
    return Quantity{std::move(value), dimension, exact};
}

// a * b^sign, but for the ratio kind. Empty for powers out of range and for two currencies.
std::optional<Dimension> combine_powers(const Dimension& a, const Dimension& b, int sign) {
    if (a.currency != 0 && b.currency != 0 && a.currency != b.currency) return std::nullopt;
    Dimension result;
    for (std::size_t base = 0; base < result.power.size(); ++base) {
        const int power = a.power[base] + sign * b.power[base];
        if (power > highest_power || power < -highest_power) return std::nullopt;
        result.power[base] = static_cast<std::int8_t>(power);
    }
    if (result.power[money] != 0) result.currency = a.currency != 0 ? a.currency : b.currency;
    return result;
}

}  // namespace

std::optional<Quantity> add(const Quantity& a, const Quantity& b) {
    if (a.dimension != b.dimension) return std::nullopt;
    return checked(a.value + b.value, a.dimension, a.exact && b.exact);
}

std::optional<Quantity> subtract(const Quantity& a, const Quantity& b) {
    if (a.dimension != b.dimension) return std::nullopt;
    return checked(a.value - b.value, a.dimension, a.exact && b.exact);
}

std::optional<Quantity> multiply(const Quantity& a, const Quantity& b) {
    std::optional<Dimension> dimension = combine_powers(a.dimension, b.dimension, 1);
    if (!dimension) return std::nullopt;
    // A ratio stays what it was meant as only while plain numbers scale it.
    if (a.is_number()) dimension->ratio = b.dimension.ratio;
    if (b.is_number()) dimension->ratio = a.dimension.ratio;
    return checked(a.value * b.value, *dimension, a.exact && b.exact);
}

std::optional<Quantity> divide(const Quantity& a, const Quantity& b) {
    if (b.value == 0) return std::nullopt;
    std::optional<Dimension> dimension = combine_powers(a.dimension, b.dimension, -1);
    if (!dimension) return std::nullopt;
    if (b.is_number()) dimension->ratio = a.dimension.ratio;
    return checked(a.value / b.value, *dimension, a.exact && b.exact);
}

std::optional<std::strong_ordering> compare(const Quantity& a, const Quantity& b) {
    if (a.dimension != b.dimension) return std::nullopt;
    return cmp(a.value, b.value) <=> 0;
}

Quantity negate(const Quantity& a) {
    return {-a.value, a.dimension, a.exact};
}

}  // namespace rodwright
