// Exact lengths as the whole numbers that the cutting core works with.
#pragma once

#include "compiler/quantity/format.hpp"
#include "compiler/stock/cutting/problem.hpp"

namespace rodwright {

// Parts are rounded up and boards down to a step that a tape shows, so that what fits in whole numbers fits.
class Grid {
  public:
    explicit Grid(LengthUnit unit) : step_(unit == LengthUnit::inch ? ratio(254, 320) : ratio(1, 2)) {}

    int up(const Rational& length) const;
    int down(const Rational& length) const;
    Rational length(int steps) const { return step_ * steps; }

  private:
    Rational step_;  // 1/32 in or 1/2 mm
};

}  // namespace rodwright
