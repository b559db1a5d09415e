#include "compiler/stock/rough/milling.hpp"

#include <algorithm>

namespace rodwright {

const ThicknessClass* MillingData::find_class(const std::string& name) const {
    const auto found = std::ranges::find(classes, name, &ThicknessClass::name);
    return found == classes.end() ? nullptr : &*found;
}

const ThicknessClass* MillingData::class_for(const Rational& finished) const {
    const auto found = std::ranges::find_if(
        classes, [&](const ThicknessClass& each) { return each.usual && each.surfaced >= finished; });
    return found == classes.end() ? nullptr : &*found;
}

const Rational& MillingData::shortest_milled() const {
    return std::max(jointer.shortest, planer.shortest);
}

}  // namespace rodwright
