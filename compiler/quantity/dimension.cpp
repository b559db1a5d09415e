#include <algorithm>
#include <cstdlib>

#include "compiler/quantity/units.hpp"

namespace rodwright {
namespace {

constexpr std::array<std::string_view, static_cast<std::size_t>(Base::count_)> base_names = {
    "length", "angle", "mass", "force", "time", "temperature", "money"};

std::string base_name(const Dimension& dimension, std::size_t base) {
    std::string name(base_names[base]);
    if (base == static_cast<std::size_t>(Base::money)) {
        name += " in ";
        name += currency(dimension.currency).code;
    }
    return name;
}

std::string power_name(const Dimension& dimension, std::size_t base, int power) {
    if (base == static_cast<std::size_t>(Base::length) && power == 2) return "area";
    if (base == static_cast<std::size_t>(Base::length) && power == 3) return "volume";
    constexpr std::array<std::string_view, 5> suffix = {"", "", " squared", " cubed", " to the 4th"};
    return base_name(dimension, base) + std::string(suffix[static_cast<std::size_t>(power)]);
}

std::string joined_names(const Dimension& dimension, int sign) {
    std::string names;
    for (std::size_t base = 0; base < dimension.power.size(); ++base) {
        const int power = sign * dimension.power[base];
        if (power <= 0) continue;
        if (!names.empty()) names += sign > 0 ? " times " : " and ";
        names += power_name(dimension, base, power);
    }
    return names;
}

std::string ratio_name(RatioKind kind) {
    switch (kind) {
        case RatioKind::slope:
            return "slope";
        case RatioKind::percentage:
            return "percentage";
        case RatioKind::number:
            break;
    }
    return "number";
}

}  // namespace

bool Dimension::dimensionless() const {
    return std::ranges::all_of(power, [](std::int8_t each) { return each == 0; });
}

Dimension Dimension::of(Base base) {
    Dimension dimension;
    dimension.power[static_cast<std::size_t>(base)] = 1;
    return dimension;
}

std::string dimension_name(const Dimension& dimension) {
    if (dimension.dimensionless()) return ratio_name(dimension.ratio);
    const std::string above = joined_names(dimension, 1);
    const std::string below = joined_names(dimension, -1);
    if (below.empty()) return above;
    return (above.empty() ? "number" : above) + " per " + below;
}

}  // namespace rodwright
