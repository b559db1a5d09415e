#include "compiler/check/words.hpp"

namespace rodwright {

LengthStyle computed_style(LengthStyle style) {
    style.step = style.unit == LengthUnit::inch ? ratio(1, 64) : ratio(1, 10);
    return style;
}

std::string about(double millimetres, const LengthStyle& style) {
    return format_length(Rational(millimetres), computed_style(style));
}

std::string_view along_words(Axis axis) {
    constexpr std::array<std::string_view, 3> words = {"from left to right", "from front to back",
                                                       "up and down"};
    return words[static_cast<std::size_t>(axis)];
}

}  // namespace rodwright
