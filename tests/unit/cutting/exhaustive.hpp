// The true optimum of a tiny problem, by trying every guillotine cut.
#pragma once

#include <optional>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

// The least cost at which all parts (at most 7) can be cut; nothing if they cannot be.
std::optional<Amount> exhaustive_optimum(const Problem& problem);

}  // namespace rodwright::cutting
