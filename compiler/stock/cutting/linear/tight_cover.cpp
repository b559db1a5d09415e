#include "compiler/stock/cutting/linear/tight_cover.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <utility>

#include "compiler/stock/cutting/linear/knapsack.hpp"
#include "compiler/stock/cutting/random.hpp"

namespace rodwright::cutting::linear {
namespace {

constexpr std::size_t most_patterns = 1000;
constexpr long most_knapsack_steps = 1'000'000;
constexpr long steps_of_try = 1'000'000;  // patterns looked at
constexpr int most_tries = 40;
constexpr double gap_slack = 1e-6;

// Prices of the wanted pieces, and what each bar costs at those: no pattern is worth more than its bar.
struct Prices {
    std::vector<double> wanted;
    std::vector<double> bars;
};

// What a pattern costs beyond the worth of its pieces, by each of the prices.
struct Candidate {
    std::array<double, 2> excess{};
    double rank = 0;
    Pattern pattern;
};

Prices prices_of_duals(const Cover& cover, const Master& master) {
    const auto end = master.duals().begin() + static_cast<long>(cover.wanted.size());
    Prices prices{{master.duals().begin(), end}, {}};
    for (std::size_t bar = 0; bar < cover.bars.size(); ++bar) {
        prices.bars.push_back(static_cast<double>(cover.bars[bar].cost) - master.bar_dual(bar));
    }
    return prices;
}

// By length, as the cheapest bar sells it: limits the waste.
Prices prices_of_lengths(const Cover& cover) {
    Prices prices;
    double rate = std::numeric_limits<double>::max();
    for (const Bar& bar : cover.bars) {
        prices.bars.push_back(static_cast<double>(bar.cost));
        rate = std::min(rate, prices.bars.back() / bar.length);
    }
    for (const Wanted& wanted : cover.wanted) prices.wanted.push_back(rate * wanted.length);
    return prices;
}

// A plan costs what its pieces are worth and the excesses of its patterns, so by any prices these add up to
// no more than the gap that the limit leaves.
class TightCover {
  public:
    TightCover(const Cover& cover, const Master& master, Amount limit)
        : cover_(cover), prices_{prices_of_duals(cover, master), prices_of_lengths(cover)} {
        for (const Wanted& wanted : cover.wanted) left_.push_back(wanted.quantity);
        for (const Bar& bar : cover.bars) bars_left_.push_back(bar.available);
        for (std::size_t p = 0; p < prices_.size(); ++p) {
            gaps_[p] = static_cast<double>(limit) + gap_slack;
            for (std::size_t i = 0; i < left_.size(); ++i) gaps_[p] -= prices_[p].wanted[i] * left_[i];
            for (std::size_t bar = 0; bar < cover.bars.size(); ++bar) {
                const double dual = static_cast<double>(cover.bars[bar].cost) - prices_[p].bars[bar];
                gaps_[p] -= dual * bars_left_[bar];
            }
        }
    }

    // Tries in many orders, each for a while, as much hangs on the first few patterns.
    std::vector<Pattern> run() {
        std::vector<Candidate> candidates = candidates_in_gap();
        if (candidates.size() > most_patterns) return {};
        std::vector<const Candidate*> order;
        for (const Candidate& candidate : candidates) order.push_back(&candidate);
        Random random(1);
        for (int tries = 0; tries < most_tries; ++tries) {
            for (Candidate& candidate : candidates) {
                candidate.rank = candidate.excess[0] + gaps_[0] * 0.005 * random.below(tries == 0 ? 1 : 100);
            }
            std::sort(order.begin(), order.end(), [](const Candidate* a, const Candidate* b) {
                return std::make_pair(a->rank, a) < std::make_pair(b->rank, b);
            });
            steps_left_ = steps_of_try;
            if (cover_rest(order)) return plan_;
            if (steps_left_ > 0) break;  // all has been tried
        }
        return {};
    }

  private:
    // More than may be looked at, if there are too many.
    std::vector<Candidate> candidates_in_gap() const {
        std::vector<Candidate> found;
        for (std::size_t bar = 0; bar < cover_.bars.size() && found.size() <= most_patterns; ++bar) {
            const double floor = prices_[0].bars[bar] - gaps_[0];
            const auto keep = [&](double, const std::vector<Pattern::Entry>& entries) {
                Candidate candidate{{}, 0, {static_cast<int>(bar), entries}};
                for (std::size_t p = 0; p < prices_.size(); ++p) candidate.excess[p] = excess(candidate, p);
                if (within_gaps(candidate)) found.push_back(std::move(candidate));
                return found.size() > most_patterns ? std::numeric_limits<double>::max() : floor;
            };
            valuable_patterns(cover_.wanted, prices_[0].wanted, cover_.bars[bar].length, floor,
                              most_knapsack_steps, keep);
        }
        return found;
    }

    double excess(const Candidate& candidate, std::size_t p) const {
        double excess = prices_[p].bars[at(candidate.pattern.bar)];
        for (const auto& entry : candidate.pattern.entries) {
            excess -= prices_[p].wanted[at(entry.wanted)] * entry.count;
        }
        return excess;
    }

    bool within_gaps(const Candidate& candidate) const {
        return candidate.excess[0] <= gaps_[0] && candidate.excess[1] <= gaps_[1];
    }

    // Takes the piece that the fewest patterns are left for, and tries each of these.
    bool cover_rest(const std::vector<const Candidate*>& before) {
        std::vector<const Candidate*> possible;
        std::vector<int> ways(left_.size(), 0);
        for (const Candidate* candidate : before) {
            if (!fits(*candidate)) continue;
            possible.push_back(candidate);
            for (const auto& entry : candidate->pattern.entries) ++ways[at(entry.wanted)];
        }
        steps_left_ -= static_cast<long>(before.size());
        std::size_t rarest = left_.size();
        for (std::size_t i = 0; i < left_.size(); ++i) {
            if (left_[i] > 0 && (rarest == left_.size() || ways[i] < ways[rarest])) rarest = i;
        }
        if (rarest == left_.size()) return true;
        for (const Candidate* candidate : possible) {
            if (steps_left_ <= 0) return false;
            if (!cuts(*candidate, rarest)) continue;
            account(*candidate, 1);
            plan_.push_back(candidate->pattern);
            if (cover_rest(possible)) return true;
            plan_.pop_back();
            account(*candidate, -1);
        }
        return false;
    }

    bool fits(const Candidate& candidate) const {
        return within_gaps(candidate) && bars_left_[at(candidate.pattern.bar)] > 0 &&
               std::all_of(candidate.pattern.entries.begin(), candidate.pattern.entries.end(),
                           [&](const auto& entry) { return left_[at(entry.wanted)] >= entry.count; });
    }

    static bool cuts(const Candidate& candidate, std::size_t wanted) {
        return std::any_of(candidate.pattern.entries.begin(), candidate.pattern.entries.end(),
                           [&](const auto& entry) { return at(entry.wanted) == wanted; });
    }

    void account(const Candidate& candidate, int sign) {
        for (std::size_t p = 0; p < gaps_.size(); ++p) gaps_[p] -= sign * candidate.excess[p];
        bars_left_[at(candidate.pattern.bar)] -= sign;
        for (const auto& entry : candidate.pattern.entries) left_[at(entry.wanted)] -= sign * entry.count;
    }

    static std::size_t at(int index) { return static_cast<std::size_t>(index); }

    const Cover& cover_;
    std::array<Prices, 2> prices_;
    std::array<double, 2> gaps_{};  // that the patterns still to be taken may add
    std::vector<int> left_;
    std::vector<int> bars_left_;
    std::vector<Pattern> plan_;
    long steps_left_ = 0;
};

}  // namespace

std::vector<Pattern> tight_cover(const Cover& cover, const Master& master, Amount limit) {
    return TightCover(cover, master, limit).run();
}

}  // namespace rodwright::cutting::linear
