#include "compiler/stock/plan/grid.hpp"

#include <algorithm>

namespace rodwright {
namespace {

int within_core(const Rational& steps) {
    if (steps > cutting::max_size) return cutting::max_size;
    return std::max(0, static_cast<int>(steps.get_num().get_si()));
}

}  // namespace

int Grid::up(const Rational& length) const {
    return within_core(ceil(length / step_));
}

int Grid::down(const Rational& length) const {
    return within_core(floor(length / step_));
}

}  // namespace rodwright
