// The least cost of stock that is enough by several measures at once.
#pragma once

#include <optional>
#include <vector>

#include "compiler/stock/cutting/bounds/measures.hpp"

namespace rodwright {

struct StockKind {
    cutting::Amount cost = 0;
    std::optional<int> available;  // nothing: as many as are asked for
};

// No choice of whole pieces that holds what every measure needs costs less. Empty if no choice holds it.
// Where there are too many choices to look at all, the least by single measures with the last piece in part.
std::optional<cutting::Amount> least_cover(const std::vector<StockKind>& kinds,
                                           const std::vector<cutting::Measure>& measures);

}  // namespace rodwright
