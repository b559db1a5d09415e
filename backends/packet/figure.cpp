#include "backends/packet/figure.hpp"

namespace rodwright::packet {

namespace {

std::string in_one_unit(const Rational& millimetres, LengthStyle style) {
    style.unit_sign = style.unit == LengthUnit::inch;
    return format_length(millimetres, style);
}

std::string beside(const std::string& own, const std::string& other) {
    return own == other ? own : own + " [" + other + "]";
}

}  // namespace

LengthStyle usual_style(LengthUnit unit) {
    return unit == LengthUnit::inch ? LengthStyle{unit, ratio(1, 32)} : LengthStyle{unit, ratio(1, 10)};
}

LengthUnit other_unit(LengthUnit unit) {
    return unit == LengthUnit::inch ? LengthUnit::millimetre : LengthUnit::inch;
}

std::string figure(const Rational& millimetres, const FigureStyle& style) {
    const std::string own = in_one_unit(millimetres, style.own);
    if (!style.beside || millimetres == 0) return own;
    return beside(own, in_one_unit(millimetres, *style.beside));
}

std::string quantity_figure(const Quantity& quantity, const FigureStyle& style) {
    const std::string own = format_quantity(quantity, style.own);
    return style.beside ? beside(own, format_quantity(quantity, *style.beside)) : own;
}

}  // namespace rodwright::packet
