#include "compiler/stock/cutting/bounds/stock_choice.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <utility>

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
        descend(0, needed_area(problem_), 0);
        return steps_ < most_steps;
    }

  private:
    void descend(std::size_t place, Amount need, Amount cost) {
        if (++steps_ >= most_steps) return;
        const StockPiece& piece = problem_.stock[order_[place]];
        const Amount area = piece.size.grown(problem_.kerf).area();
        const Amount available = piece.available ? std::min<Amount>(*piece.available, pieces_) : pieces_;
        const bool last = place + 1 == order_.size();
        Amount from = 0;
        if (last) {
            from = std::max(up(std::max<Amount>(need, 0), area),
                            up(std::max<Amount>(least_ - cost, 0), piece.cost));
        }
        for (Amount count = from; count <= available && cost + count * piece.cost <= most_; ++count) {
            chosen_[order_[place]] = static_cast<int>(count);
            if (last) {
                most_ = visit_(cost + count * piece.cost, chosen_);
                break;
            }
            descend(place + 1, need - count * area, cost + count * piece.cost);
        }
        chosen_[order_[place]] = 0;
    }

    static Amount up(Amount amount, Amount by) { return (amount + by - 1) / by; }

    const Problem& problem_;
    Amount least_;
    Amount most_;
    Visit visit_;
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
