#include "compiler/stock/cutting/bounds/bounds.hpp"

namespace rodwright::cutting {

LowerBound lower_bound(const Problem& problem) {
    Amount parts = 0;
    const auto grown = [&](Size size) { return (static_cast<Amount>(size.along[0]) + problem.kerf) * (size.along[1] + problem.kerf); };
    for (const PartKind& part : problem.parts) parts += part.quantity * grown(part.size);
    // The cheapest stock per area, as a fraction cost / area.
    Amount cost = 0, area = 0;
    for (const StockPiece& piece : problem.stock) {
        const Amount a = grown(piece.size);
        if (area == 0 || static_cast<double>(piece.cost) * static_cast<double>(area) < static_cast<double>(cost) * static_cast<double>(a)) { cost = piece.cost; area = a; }
    }
    if (area == 0) return {};
    return {static_cast<Amount>(static_cast<long double>(parts) * cost / area + 0.9999999L), BoundMethod::area};
}

}  // namespace rodwright::cutting
