#include "compiler/stock/cutting/bounds/stock_choice.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <utility>

#include "compiler/stock/cutting/bounds/measures.hpp"

namespace rodwright::cutting {
namespace {

constexpr long most_steps = 100'000;

class Choices {
  public:
    // visit(cost, choice) is called with the least number of pieces of the last kind that area and cost allow
    // and gives the most that later choices may cost.
    using Visit = std::function<Amount(Amount, const StockChoice&)>;

    Choices(const Problem& problem, Amount least, Amount most, Visit visit)
        : problem_(problem),
          least_(least),
          most_(most),
          visit_(std::move(visit)),
          measures_(measures(problem)),
          chosen_(problem.stock.size(), 0),
          order_(problem.stock.size()) {
        for (const PartKind& part : problem.parts) pieces_ += part.quantity;
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        // The cheapest kind comes last, where its number follows from what the others leave.
        std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
            return problem.stock[a].cost > problem.stock[b].cost;
        });
    }

    // False if it gave up.
    bool run() {
        if (order_.empty() || problem_.stock[order_.back()].cost == 0) return false;
        std::vector<Amount> need;
        for (const Measure& measure : measures_) need.push_back(measure.needed);
        descend(0, need, 0);
        return steps_ < most_steps;
    }

  private:
    void descend(std::size_t place, const std::vector<Amount>& need, Amount cost) {
        if (++steps_ >= most_steps) return;
        const std::size_t kind = order_[place];
        const StockPiece& piece = problem_.stock[kind];
        const Amount available = piece.available ? std::min<Amount>(*piece.available, pieces_) : pieces_;
        const bool last = place + 1 == order_.size();
        Amount from = 0;
        if (last) from = std::max(pieces_for(need, kind), up(std::max<Amount>(least_ - cost, 0), piece.cost));
        std::vector<Amount> left = need;
        take(left, kind, from);
        for (Amount count = from; count <= available && cost + count * piece.cost <= most_; ++count) {
            chosen_[kind] = static_cast<int>(count);
            if (last) {
                most_ = visit_(cost + count * piece.cost, chosen_);
                break;
            }
            descend(place + 1, left, cost + count * piece.cost);
            take(left, kind, 1);
        }
        chosen_[kind] = 0;
    }

    void take(std::vector<Amount>& need, std::size_t kind, Amount count) const {
        for (std::size_t i = 0; i < need.size(); ++i) need[i] -= count * measures_[i].held[kind];
    }

    // So many of that kind hold all that is still needed; more than there can be if none do.
    Amount pieces_for(const std::vector<Amount>& need, std::size_t kind) const {
        Amount count = 0;
        for (std::size_t i = 0; i < need.size(); ++i) {
            if (need[i] <= 0) continue;
            const Amount held = measures_[i].held[kind];
            if (held == 0) return pieces_ + 1;
            count = std::max(count, up(need[i], held));
        }
        return count;
    }

    static Amount up(Amount amount, Amount by) { return (amount + by - 1) / by; }

    const Problem& problem_;
    Amount least_;
    Amount most_;
    Visit visit_;
    std::vector<Measure> measures_;
    StockChoice chosen_;
    std::vector<std::size_t> order_;
    Amount pieces_ = 0;
    long steps_ = 0;
};

}  // namespace

Amount needed_area(const Problem& problem) {
    Amount needed = 0;
    for (const PartKind& part : problem.parts) {
        Amount area = part.size.grown(problem.kerf).area();
        if (part.may_turn) area = std::min(area, part.size.turned().grown(problem.kerf).area());
        needed += part.quantity * area;
    }
    return needed;
}

std::vector<StockChoice> stock_choices(const Problem& problem, Amount least, Amount most, std::size_t count) {
    std::vector<std::pair<Amount, StockChoice>> found;
    Choices choices(problem, least, most, [&](Amount cost, const StockChoice& choice) {
        found.emplace_back(cost, choice);
        return most;
    });
    if (!choices.run()) return {};
    std::sort(found.begin(), found.end());
    std::vector<StockChoice> cheapest;
    for (std::size_t i = 0; i < std::min(count, found.size()); ++i) cheapest.push_back(found[i].second);
    return cheapest;
}

Amount rounded_to_stock(const Problem& problem, Amount bound) {
    Amount divisor = 0;
    for (const StockPiece& piece : problem.stock) divisor = std::gcd(divisor, piece.cost);
    if (divisor == 0 || bound == 0) return bound;
    const Amount multiple = (bound + divisor - 1) / divisor * divisor;
    constexpr Amount any = std::numeric_limits<Amount>::max();
    Amount best = any;
    Choices choices(problem, multiple, any / 4, [&](Amount cost, const StockChoice&) {
        best = std::min(best, cost);
        return best - 1;
    });
    return choices.run() && best != any ? best : multiple;
}

}  // namespace rodwright::cutting
