#include "compiler/stock/plan/least_cover.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

namespace rodwright {
namespace {

using cutting::Amount;
using cutting::Measure;

constexpr Amount nothing_holds = std::numeric_limits<Amount>::max();
constexpr int most_steps = 4'000;

class Cover {
  public:
    Cover(const std::vector<StockKind>& kinds, const std::vector<Measure>& measures)
        : kinds_(kinds), measures_(measures), place_of_(kinds.size()) {
        std::vector<std::size_t> dearest(kinds.size());
        std::iota(dearest.begin(), dearest.end(), std::size_t{0});
        std::ranges::stable_sort(dearest,
                                 [&](std::size_t a, std::size_t b) { return kinds[a].cost > kinds[b].cost; });
        order_ = dearest;
        for (std::size_t place = 0; place < order_.size(); ++place) place_of_[order_[place]] = place;
        for (const Measure& measure : measures) cheapest_.push_back(by_price(measure));
    }

    Amount least() {
        std::vector<Amount> needs;
        for (const Measure& measure : measures_) needs.push_back(measure.needed);
        const Amount in_parts = rest(0, needs);
        if (in_parts == nothing_holds) return nothing_holds;
        descend(0, needs, 0);
        return steps_ < most_steps ? best_ : in_parts;
    }

  private:
    const std::vector<StockKind>& kinds_;
    const std::vector<Measure>& measures_;
    std::vector<std::size_t> order_;  // in which numbers are chosen: the dearest first
    std::vector<std::size_t> place_of_;
    std::vector<std::vector<std::size_t>> cheapest_;  // of each measure, the kinds by what they cost for it
    Amount best_ = nothing_holds;
    int steps_ = 0;

    std::vector<std::size_t> by_price(const Measure& measure) const {
        std::vector<std::size_t> kinds;
        for (std::size_t i = 0; i < kinds_.size(); ++i) {
            if (measure.held[i] > 0) kinds.push_back(i);
        }
        std::ranges::stable_sort(kinds, [&](std::size_t a, std::size_t b) {
            const auto price = [&](std::size_t kind) {
                return static_cast<double>(kinds_[kind].cost) / static_cast<double>(measure.held[kind]);
            };
            return price(a) < price(b);
        });
        return kinds;
    }

    // What is still needed costs at least this, in kinds from `place` on: of one measure with the last piece
    // in part.
    Amount rest(std::size_t place, const std::vector<Amount>& needs) const {
        Amount most = 0;
        for (std::size_t m = 0; m < needs.size(); ++m) most = std::max(most, rest_by(m, place, needs[m]));
        return most;
    }

    Amount rest_by(std::size_t m, std::size_t place, Amount need) const {
        Amount cost = 0;
        for (const std::size_t kind : cheapest_[m]) {
            if (need <= 0) break;
            if (place_of_[kind] < place) continue;
            const Amount held = measures_[m].held[kind];
            const Amount whole =
                kinds_[kind].available ? std::min<Amount>(*kinds_[kind].available, need / held) : need / held;
            cost += whole * kinds_[kind].cost;
            need -= whole * held;
            const bool more = !kinds_[kind].available || *kinds_[kind].available > whole;
            if (need <= 0 || !more) continue;
            return cost + part(need, held, kinds_[kind].cost);
        }
        return need > 0 ? nothing_holds : cost;
    }

    // Rounded down a little, so that it stays a bound.
    static Amount part(Amount need, Amount held, Amount cost) {
        return static_cast<Amount>(static_cast<double>(need) / static_cast<double>(held) *
                                   static_cast<double>(cost) * (1 - 1e-9));
    }

    void descend(std::size_t place, const std::vector<Amount>& needs, Amount cost) {
        if (++steps_ >= most_steps) return;
        const Amount more = rest(place, needs);
        if (more == nothing_holds || cost + more >= best_) return;
        if (more == 0 && std::ranges::all_of(needs, [](Amount need) { return need <= 0; })) {
            best_ = cost;
            return;
        }
        const std::size_t kind = order_[place];
        std::vector<Amount> left = needs;
        for (int count = 0; !kinds_[kind].available || count <= *kinds_[kind].available; ++count) {
            if (count > 0 && !take(kind, left)) return;
            descend(place + 1, left, cost + count * kinds_[kind].cost);
            if (cost + count * kinds_[kind].cost >= best_ || steps_ >= most_steps) return;
        }
    }

    // False if one more piece is of no use.
    bool take(std::size_t kind, std::vector<Amount>& needs) const {
        bool of_use = false;
        for (std::size_t m = 0; m < needs.size(); ++m) {
            of_use = of_use || (needs[m] > 0 && measures_[m].held[kind] > 0);
            needs[m] -= measures_[m].held[kind];
        }
        return of_use;
    }
};

}  // namespace

std::optional<Amount> least_cover(const std::vector<StockKind>& kinds, const std::vector<Measure>& measures) {
    const Amount least = Cover(kinds, measures).least();
    if (least == nothing_holds) return std::nullopt;
    return least;
}

}  // namespace rodwright
