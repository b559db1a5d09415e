// A measure of what parts take up that knows how they lie on boards: values from a linear programme over
// cutting patterns (P. Gilmore, R. Gomory, Operations Research 13 (1965) 94-120).
#pragma once

#include <optional>
#include <vector>

#include "compiler/stock/cutting/bounds/measures.hpp"
#include "compiler/stock/plan/least_cover.hpp"

namespace rodwright {

// Sizes with the kerf, as what is cut from a board with the kerf.
struct WantedPieces {
    cutting::Size size;
    int quantity = 0;
    bool strips = false;     // may lie side by side in any number, one step wide each
    std::vector<bool> from;  // by kind of board: thick enough
};

struct BoardKind {
    cutting::Size size;
    StockKind stock;
};

// Each piece has a value; what is cut from a board of a kind, in any number of stages, is worth at most as
// much as held. That is found by dynamic programming over all patterns, in whole numbers. Empty where that
// would take too long.
std::optional<cutting::Measure> pattern_measure(const std::vector<WantedPieces>& pieces,
                                                const std::vector<BoardKind>& boards);

}  // namespace rodwright
