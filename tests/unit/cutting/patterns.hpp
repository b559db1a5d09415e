// Which quantities of parts one stock piece can give, by trying every cut at every whole position.
#pragma once

#include <vector>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

using Counts = std::vector<int>;  // by part kind, at most its quantity

// Those that no others contain.
std::vector<Counts> all_patterns(const Problem& problem, const StockPiece& piece);

}  // namespace rodwright::cutting
