#include "compiler/stock/rack/board_foot.hpp"

namespace rodwright {

Rational board_feet(const Rational& thickness, const Rational& width, const Rational& length) {
    const Rational inch = ratio(254, 10);
    const Rational nominal = thickness < inch ? inch : thickness;
    return nominal * width * length / (inch * inch * inch * 144);
}

}  // namespace rodwright
