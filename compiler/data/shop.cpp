#include "compiler/data/shop.hpp"

#include <algorithm>

namespace rodwright {

const ShopTool* Shop::find(const std::string& name) const {
    const auto found = std::ranges::find(tools_, name, &ShopTool::name);
    return found == tools_.end() ? nullptr : &*found;
}

static bool sold_in(LengthUnit unit, const Rational& size) {
    const Rational steps = unit == LengthUnit::inch ? Rational(size * ratio(320, 127)) : Rational(size * 2);
    return steps.get_den() == 1;
}

// Those sold in the unit, or all of them if none is.
static std::vector<Rational> sizes_in(const ShopTool& tool, std::optional<LengthUnit> unit) {
    std::vector<Rational> sizes;
    for (const Rational& size : tool.sizes) {
        if (unit && sold_in(*unit, size)) sizes.push_back(size);
    }
    return sizes.empty() ? tool.sizes : sizes;
}

std::optional<Rational> Shop::nearest(const std::string& name, const Rational& millimetres,
                                      std::optional<LengthUnit> unit) const {
    const ShopTool* tool = find(name);
    if (tool == nullptr) return std::nullopt;
    const std::vector<Rational> sizes = sizes_in(*tool, unit);
    const auto distance = [&](const Rational& size) { return Rational(abs(size - millimetres)); };
    return *std::ranges::min_element(sizes, {}, distance);
}

std::optional<Rational> Shop::at_least(const std::string& name, const Rational& millimetres,
                                       LengthUnit unit) const {
    const ShopTool* tool = find(name);
    if (tool == nullptr) return std::nullopt;
    const std::vector<Rational> sizes = sizes_in(*tool, unit);
    const auto found = std::ranges::lower_bound(sizes, millimetres);
    return found == sizes.end() ? std::nullopt : std::optional(*found);
}

std::optional<Rational> Shop::cutter_for(const std::string& name, const Rational& millimetres,
                                         LengthUnit unit) const {
    const ShopTool* tool = find(name);
    if (tool == nullptr) return std::nullopt;
    if (std::ranges::binary_search(tool->sizes, millimetres)) return millimetres;
    const auto fit = fits_.find(name);
    if (fit == fits_.end() || fit->second == CutterFit::exact) return std::nullopt;
    if (fit->second == CutterFit::larger) return at_least(name, millimetres, unit);
    const std::vector<Rational> sizes = sizes_in(*tool, unit);
    const auto above = std::ranges::lower_bound(sizes, millimetres);
    return above == sizes.begin() ? std::nullopt : std::optional(*std::prev(above));
}

Rational Shop::diameter_of(const std::string& tool, const Rational& size) const {
    const auto facts = cutters_.find(tool);
    return facts == cutters_.end() ? size : Rational(facts->second.times * size + facts->second.plus);
}

std::optional<Rational> Shop::reach_of(const std::string& tool, const Rational& size) const {
    const auto facts = cutters_.find(tool);
    if (facts == cutters_.end()) return std::nullopt;
    const auto above = facts->second.reach.upper_bound(size);
    if (above == facts->second.reach.begin()) return std::nullopt;
    return std::prev(above)->second;
}

std::optional<Rational> Shop::most_turns(const std::string& tool, const Rational& size) const {
    const auto facts = cutters_.find(tool);
    if (facts == cutters_.end() || facts->second.turns.empty()) return std::nullopt;
    const auto limit = facts->second.turns.lower_bound(diameter_of(tool, size));
    return limit == facts->second.turns.end() ? Rational(0) : limit->second;
}

const Machine* Shop::machine(const std::string& name) const {
    const auto found = std::ranges::find(machines_, name, &Machine::name);
    return found == machines_.end() ? nullptr : &*found;
}

const std::vector<OtherWay>& Shop::instead_of(const std::string& name) const {
    static const std::vector<OtherWay> none;
    const auto found = instead_.find(name);
    return found == instead_.end() ? none : found->second;
}

}  // namespace rodwright
