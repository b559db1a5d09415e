// The true optimum of a small problem: every pattern that guillotine cuts allow, and an integer programme
// over them.
#pragma once

#include <optional>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

// The least cost at which all parts can be cut, proved by GLPK; nothing if they cannot be. Takes time with
// the fourth power of the stock's sizes: meant for sizes up to 25.
std::optional<Amount> exact_optimum(const Problem& problem);

}  // namespace rodwright::cutting
