#include "compiler/stock/cutting/bounds/bounds.hpp"

#include <algorithm>

#include "compiler/stock/cutting/bounds/dual_feasible.hpp"
#include "compiler/stock/cutting/bounds/measures.hpp"
#include "compiler/stock/cutting/bounds/stock_choice.hpp"

namespace rodwright::cutting {
namespace {

// Products of areas and costs.
__extension__ using Wide = __int128;

// The area of all parts, bought at the cheapest price per area as long as there is such stock.
Amount area_bound(const Problem& problem) {
    struct Offer {
        Amount area;
        Amount cost;
        Amount available;
    };
    Amount needed = needed_area(problem);
    Amount pieces = 0;
    for (const PartKind& part : problem.parts) pieces += part.quantity;
    std::vector<Offer> offers;
    for (const StockPiece& piece : problem.stock) {
        offers.push_back({piece.size.grown(problem.kerf).area(), piece.cost,
                          std::min<Amount>(pieces, piece.available.value_or(static_cast<int>(pieces)))});
    }
    std::sort(offers.begin(), offers.end(), [](const Offer& a, const Offer& b) {
        return static_cast<Wide>(a.cost) * b.area < static_cast<Wide>(b.cost) * a.area;
    });
    Amount cost = 0;
    for (const Offer& offer : offers) {
        const Amount whole = std::min(offer.available, needed / offer.area);
        cost += whole * offer.cost;
        needed -= whole * offer.area;
        if (whole == offer.available || needed == 0) continue;
        return cost +
               static_cast<Amount>((static_cast<Wide>(needed) * offer.cost + offer.area - 1) / offer.area);
    }
    return cost;
}

}  // namespace

LowerBound lower_bound(const Problem& problem) {
    const Amount area = area_bound(problem);
    LowerBound bound{rounded_to_stock(problem, area), BoundMethod::area};
    if (bound.cost > area) bound.method = BoundMethod::stock_choice;
    if (problem.stock.size() != 1) return bound;
    const StockPiece& piece = problem.stock.front();
    const Amount pieces = dual_feasible_bound(problem);
    if (pieces * piece.cost > bound.cost) bound = {pieces * piece.cost, BoundMethod::dual_feasible};
    return bound;
}

bool too_little_stock(const Problem& problem) {
    const auto lacks = [&](const Measure& measure) {
        Amount held = 0;
        for (std::size_t i = 0; i < problem.stock.size(); ++i) {
            if (!problem.stock[i].available && measure.held[i] > 0) return false;
            held += measure.held[i] * problem.stock[i].available.value_or(0);
        }
        return held < measure.needed;
    };
    const std::vector<Measure> all = measures(problem);
    return std::any_of(all.begin(), all.end(), lacks);
}

}  // namespace rodwright::cutting
