#include "compiler/stock/rough/milling.hpp"

#include <algorithm>

namespace rodwright {

Rational Buying::share(const std::string& of_species) const {
    const auto further = species.find(of_species);
    return grades.at(grade) + (further == species.end() ? Rational(0) : further->second);
}

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
