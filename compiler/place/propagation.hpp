// The first phase of solving: an equation with one unknown left determines it.
#pragma once

#include <span>

#include "compiler/place/linear_rows.hpp"

namespace rodwright {

struct Propagated {
    std::vector<std::size_t> contradicting;  // rows without an unknown left that do not hold
    std::vector<std::size_t> remaining;      // rows with two or more unknowns left, in increasing order
};

// Fills `values`, which comes in empty for every unknown. Linear in the number of entries.
Propagated propagate(std::span<const LinearRow> rows, Values& values, Effort& effort);

}  // namespace rodwright
