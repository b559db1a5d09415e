#include "compiler/stock/cutting/guillotine/kinds.hpp"

#include <algorithm>
#include <limits>

namespace rodwright::cutting::guillotine {
namespace {

// The largest stock piece has a weight between half of this and all of it.
constexpr Amount weight_limit = Amount{1} << 24;

}  // namespace

Kinds::Kinds(const Problem& problem) : rule(problem.rule), kerf(problem.kerf) {
    Amount total = 0;
    for (const PartKind& part : problem.parts) total += part.quantity;
    Amount largest = 1;
    for (const StockPiece& piece : problem.stock) {
        const Amount limit =
            std::min<Amount>(total, piece.available.value_or(std::numeric_limits<int>::max()));
        stock.push_back({piece.size.grown(kerf), static_cast<int>(limit), piece.cost, 0, piece.defects});
        largest = std::max(largest, stock.back().size.area());
    }
    while ((largest << up_) <= weight_limit / 2) ++up_;
    while ((largest >> down_) > weight_limit) ++down_;
    unit_ = weight_of(largest);
    per_unit_ = 1.0 / static_cast<double>(unit_);
    for (Stock& piece : stock) piece.weight = weight_of(piece.size.area());

    least_part_ = {{max_size * 2, max_size * 2}};
    for (const PartKind& part : problem.parts) {
        const Size upright = part.size.grown(kerf);
        const Size turned = part.size.turned().grown(kerf);
        const bool turns = part.may_turn && part.size != part.size.turned();
        parts.push_back({upright, turned, part.quantity, turns, part.one_face, 0});
        any_one_face_ = any_one_face_ || part.one_face;
        parts.back().weight = weight_of(parts.back().least_area());
        for (std::size_t a = 0; a < 2; ++a) {
            least_part_.along[a] = std::min(least_part_.along[a], upright.along[a]);
            if (turns) least_part_.along[a] = std::min(least_part_.along[a], turned.along[a]);
        }
    }
    least_worth_ = least_part_;
    any_cut_ = !rule.stages && rule.shortest_cut == Size{};
    for (std::size_t a = 0; a < 2; ++a) least_useful_.along[a] = std::max(1, problem.least_useful.along[a]);
}

Kinds Kinds::for_leftovers() const {
    Kinds same = *this;
    same.leftovers = true;
    same.least_worth_ = least_useful_.grown(kerf);
    same.not_worth_ = kerf;
    return same;
}

Kinds Kinds::for_one_sheet(int piece, const std::vector<int>& quantities,
                           const std::vector<Amount>& weights) const {
    Kinds one = *this;
    one.stock = {stock[static_cast<std::size_t>(piece)]};
    one.stock[0].available = 1;
    one.stock[0].cost = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const Amount most = one.stock[0].size.area() / parts[i].least_area();
        one.parts[i].quantity = weights[i] > 0 ? static_cast<int>(std::min<Amount>(most, quantities[i])) : 0;
        one.parts[i].weight = weights[i];
    }
    return one;
}

}  // namespace rodwright::cutting::guillotine
