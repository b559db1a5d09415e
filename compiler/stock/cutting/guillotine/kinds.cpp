#include "compiler/stock/cutting/guillotine/kinds.hpp"

#include <algorithm>
#include <limits>

namespace rodwright::cutting::guillotine {
namespace {

// The largest stock piece has a weight between half of this and all of it.
constexpr Amount weight_limit = Amount{1} << 24;

Size grown(Size size, int kerf) {
    return {{size.along[0] + kerf, size.along[1] + kerf}};
}

}  // namespace

Kinds::Kinds(const Problem& problem) : rule(problem.rule), kerf(problem.kerf) {
    Amount total = 0;
    for (const PartKind& part : problem.parts) total += part.quantity;
    Amount largest = 1;
    for (const StockPiece& piece : problem.stock) {
        const Amount limit =
            std::min<Amount>(total, piece.available.value_or(std::numeric_limits<int>::max()));
        stock.push_back({grown(piece.size, kerf), static_cast<int>(limit), piece.cost, 0, piece.defects});
        largest = std::max(largest, stock.back().size.area());
    }
    while ((largest << up_) <= weight_limit / 2) ++up_;
    while ((largest >> down_) > weight_limit) ++down_;
    unit_ = weight_of(largest);
    for (Stock& piece : stock) piece.weight = weight_of(piece.size.area());

    least = {{max_size * 2, max_size * 2}};
    for (const PartKind& part : problem.parts) {
        const Size size = grown(part.size, kerf);
        const bool turns = part.may_turn && size != size.turned();
        parts.push_back({size, part.quantity, turns, weight_of(size.area())});
        for (int axis = 0; axis < 2; ++axis) {
            const auto a = static_cast<std::size_t>(axis);
            least.along[a] = std::min(least.along[a], size.along[a]);
            if (turns) least.along[a] = std::min(least.along[a], size.along[1 - a]);
        }
    }
}

Kinds Kinds::for_one_sheet(int piece, const std::vector<int>& quantities,
                           const std::vector<Amount>& weights) const {
    Kinds one = *this;
    one.stock = {stock[static_cast<std::size_t>(piece)]};
    one.stock[0].available = 1;
    one.stock[0].cost = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Amount most = one.stock[0].size.area() / parts[i].size.area();
        one.parts[i].quantity = weights[i] > 0 ? static_cast<int>(std::min<Amount>(most, quantities[i])) : 0;
        one.parts[i].weight = weights[i];
    }
    return one;
}

}  // namespace rodwright::cutting::guillotine
