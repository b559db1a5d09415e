#include "compiler/workplan/operations/guide_bush.hpp"

#include <algorithm>

namespace rodwright {

const ToolNeed::Alternative* template_bit(const ToolNeed& need) {
    const auto is = [](std::string_view tool) {
        return [tool](const ToolNeed::Alternative& each) { return each.tool == tool; };
    };
    if (std::ranges::any_of(need.alternatives, is("groove_cutter"))) return nullptr;
    const auto bit = std::ranges::find_if(need.alternatives, [&](const ToolNeed::Alternative& each) {
        return is("straight_bit")(each) || is("dovetail_bit")(each);
    });
    return bit == need.alternatives.end() ? nullptr : &*bit;
}

Rational bush_offset(const Rational& bush, const Rational& bit) {
    return (bush - bit) / 2;
}

Rational opening_for(const Rational& pocket, const Rational& bush, const Rational& bit) {
    return pocket + 2 * bush_offset(bush, bit);
}

Rational least_clearance() {
    return inches(1, 8);
}

std::optional<Rational> bush_for(const Shop& shop, const Rational& bit, LengthUnit unit) {
    return shop.at_least("guide_bush", Rational(bit + least_clearance()), unit);
}

}  // namespace rodwright
