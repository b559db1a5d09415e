#include "compiler/quantity/units.hpp"

#include <algorithm>
#include <iterator>

namespace rodwright {
namespace {

constexpr Dimension dimension_of(Base base, std::uint8_t currency_index = 0) {
    Dimension dimension;
    dimension.power[static_cast<std::size_t>(base)] = 1;
    dimension.currency = currency_index;
    return dimension;
}

constexpr Dimension percentage() {
    Dimension dimension;
    dimension.ratio = RatioKind::percentage;
    return dimension;
}

constexpr Currency currencies[] = {
#define RODWRIGHT_CURRENCY(code, digits, meaning) {code, digits},
#include "compiler/quantity/units.def"
};

// 1-based, since 0 stands for no money.
constexpr std::uint8_t currency_index(std::string_view code) {
    std::uint8_t index = 1;
    for (const Currency& each : currencies) {
        if (each.code == code) break;
        ++index;
    }
    return index;
}

constexpr Unit unit_table[] = {
#define RODWRIGHT_UNIT(word, base, numerator, denominator, meaning) \
    {word, dimension_of(Base::base), numerator, denominator},
#define RODWRIGHT_PERCENT(word, numerator, denominator, meaning) {word, percentage(), numerator, denominator},
#define RODWRIGHT_TEMPERATURE(word, numerator, denominator, offset_numerator, offset_denominator, meaning) \
    {word, dimension_of(Base::temperature), numerator, denominator, offset_numerator, offset_denominator},
#define RODWRIGHT_CURRENCY(code, digits, meaning) {code, dimension_of(Base::money, currency_index(code))},
#include "compiler/quantity/units.def"
};

}  // namespace

std::span<const Unit> units() {
    return unit_table;
}

const Unit* find_unit(std::string_view word) {
    const auto* found = std::ranges::find(unit_table, word, &Unit::word);
    return found == std::end(unit_table) ? nullptr : found;
}

const Currency& currency(std::uint8_t index) {
    return currencies[index - 1U];
}

}  // namespace rodwright
