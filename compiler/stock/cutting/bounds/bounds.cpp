#include "compiler/stock/cutting/bounds/bounds.hpp"

#include <algorithm>
#include <numeric>

#include "compiler/stock/cutting/bounds/dual_feasible.hpp"

namespace rodwright::cutting {
namespace {

// Products of areas and costs.
__extension__ using Wide = __int128;

// What a part takes of a stock piece at least, with the kerf behind it along both axes.
Amount least_area(const PartKind& part, Size kerf) {
    const Amount upright = part.size.grown(kerf).area();
    return part.may_turn ? std::min(upright, part.size.turned().grown(kerf).area()) : upright;
}

// The area of all parts, bought at the cheapest price per area as long as there is such stock.
Amount area_bound(const Problem& problem) {
    struct Offer {
        Amount area;
        Amount cost;
        Amount available;
    };
    Amount needed = 0;
    Amount pieces = 0;
    for (const PartKind& part : problem.parts) {
        needed += part.quantity * least_area(part, problem.kerf);
        pieces += part.quantity;
    }
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

// Every plan's cost is a multiple of the costs' common divisor.
Amount rounded_up(Amount bound, const Problem& problem) {
    Amount divisor = 0;
    for (const StockPiece& piece : problem.stock) divisor = std::gcd(divisor, piece.cost);
    return divisor == 0 ? bound : (bound + divisor - 1) / divisor * divisor;
}

}  // namespace

LowerBound lower_bound(const Problem& problem) {
    LowerBound bound{rounded_up(area_bound(problem), problem), BoundMethod::area};
    if (problem.stock.size() != 1) return bound;
    const StockPiece& piece = problem.stock.front();
    const Amount pieces = dual_feasible_bound(problem);
    if (pieces * piece.cost > bound.cost) bound = {pieces * piece.cost, BoundMethod::dual_feasible};
    return bound;
}

}  // namespace rodwright::cutting
