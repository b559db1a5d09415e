#include "compiler/stock/cutting/linear/dive.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "compiler/stock/cutting/linear/column_generation.hpp"

namespace rodwright::cutting::linear {
namespace {

// Without chance, one in so many of the fractional patterns is fixed at once, and after a failure the next
// best are tried, at most so many at one place and so often in one dive. With chance, one is fixed at a time
// and a failure ends the dive: another one from the top does better.
constexpr std::size_t share_fixed = 12;
constexpr std::size_t ways = 2;
constexpr int most_failures = 30;
// Of the linear programme's cost: its quantities are a little too great, see Master.
constexpr double rounding = 1e-5;

// What is still to be cut, and where its entries stand in the whole problem.
struct Residual {
    Cover cover;
    std::vector<int> whole;  // index in the whole problem of each wanted length
    std::vector<int> own;    // and back; -1 where nothing is left
};

Residual residual_of(const Cover& cover, const std::vector<int>& left) {
    Residual residual;
    residual.own.assign(cover.wanted.size(), -1);
    for (std::size_t i = 0; i < cover.wanted.size(); ++i) {
        if (left[i] == 0) continue;
        residual.own[i] = static_cast<int>(residual.whole.size());
        residual.whole.push_back(static_cast<int>(i));
        residual.cover.wanted.push_back({cover.wanted[i].length, left[i]});
    }
    return residual;
}

class Dive {
  public:
    Dive(const Cover& cover, std::vector<Pattern>& pool, Amount limit, int wild, Random& random, long& work)
        : cover_(cover),
          pool_(pool),
          limit_(limit),
          wild_(wild),
          random_(random),
          work_(work),
          bars_(cover.bars) {
        for (const Wanted& wanted : cover.wanted) {
            left_.push_back(wanted.quantity);
            pieces_ += wanted.quantity;
        }
    }

    std::vector<Pattern> run() {
        if (!descend({})) plan_.clear();
        return std::move(plan_);
    }

  private:
    // What to fix next: whole parts of the amounts, or else patterns by falling fraction.
    struct Choice {
        std::vector<std::size_t> whole;
        std::vector<std::size_t> fractional;
        std::vector<std::size_t> basis;
    };

    // Completes the plan, or leaves it as it is. `basis` is that of the linear programme before.
    bool descend(const std::vector<std::size_t>& basis) {
        if (pieces_ == 0) return true;
        const Choice choice = choose(basis);
        if (!choice.whole.empty()) return try_fixing(choice.whole.begin(), choice.whole.end(), choice.basis);
        const std::size_t count = choice.fractional.size();
        const std::size_t most = wild_ == 0 ? 1 + count / share_fixed : 1;
        const int failures = wild_ == 0 ? most_failures : 1;
        for (std::size_t from = 0; from < std::min(count, ways) && failures_ < failures; ++from) {
            const auto begin = choice.fractional.begin() + static_cast<long>(from);
            const auto end = begin + static_cast<long>(std::min(most, count - from));
            if (try_fixing(begin, end, choice.basis)) return true;
        }
        return false;
    }

    template <typename Iterator>
    bool try_fixing(Iterator begin, Iterator end, const std::vector<std::size_t>& basis) {
        const std::size_t before = plan_.size();
        for (auto pattern = begin; pattern != end; ++pattern) fix(*pattern);
        if (plan_.size() > before && descend(basis)) return true;
        while (plan_.size() > before) take_back();
        return false;
    }

    // Nothing if all plans from here cost too much, as the linear programme says.
    Choice choose(const std::vector<std::size_t>& basis) {
        Residual residual = residual_of(cover_, left_);
        residual.cover.bars = bars_;
        Master master(residual.cover);
        std::vector<std::size_t> places = add_pool(residual, master, basis);
        std::vector<Pattern> fresh;
        work_ += generate_columns(residual.cover, master, fresh);
        for (Pattern pattern : fresh) {
            for (auto& entry : pattern.entries)
                entry.wanted = residual.whole[static_cast<std::size_t>(entry.wanted)];
            places.push_back(pool_.size());
            pool_.push_back(std::move(pattern));
        }
        if (!master.feasible() ||
            static_cast<double>(cost_) + master.objective() > static_cast<double>(limit_) * (1 + rounding)) {
            ++failures_;
            return {};
        }
        return choice_of(master.amounts(), master.basis(), places);
    }

    // Patterns that ask for no more than is left. Gives their places in the pool.
    std::vector<std::size_t> add_pool(const Residual& residual, Master& master,
                                      const std::vector<std::size_t>& basis) const {
        std::vector<std::size_t> places;
        for (std::size_t p = 0; p < pool_.size(); ++p) {
            if (!proper(pool_[p])) continue;
            Pattern own = pool_[p];
            for (auto& entry : own.entries)
                entry.wanted = residual.own[static_cast<std::size_t>(entry.wanted)];
            master.add(own);
            places.push_back(p);
        }
        std::vector<std::size_t> start;
        for (const std::size_t p : basis) {
            const auto place = std::lower_bound(places.begin(), places.end(), p);
            if (place == places.end() || *place != p) continue;
            start.push_back(static_cast<std::size_t>(place - places.begin()));
        }
        master.start_from(start);
        return places;
    }

    Choice choice_of(const std::vector<double>& amounts, std::vector<std::size_t> basis,
                     const std::vector<std::size_t>& places) {
        Choice choice;
        std::vector<std::pair<double, std::size_t>> fractions;
        for (std::size_t p = 0; p < amounts.size(); ++p) {
            if (amounts[p] < 1e-4) continue;
            const int whole = static_cast<int>(std::floor(amounts[p] + 1e-4));
            for (int i = 0; i < whole; ++i) choice.whole.push_back(places[p]);
            fractions.emplace_back(whole - amounts[p] - 0.01 * random_.below(wild_ + 1), places[p]);
        }
        std::sort(fractions.begin(), fractions.end());
        for (const auto& entry : fractions) choice.fractional.push_back(entry.second);
        for (std::size_t& pattern : basis) pattern = places[pattern];
        choice.basis = std::move(basis);
        return choice;
    }

    bool proper(const Pattern& pattern) const {
        return bars_[static_cast<std::size_t>(pattern.bar)].available > 0 &&
               std::all_of(pattern.entries.begin(), pattern.entries.end(), [&](const auto& entry) {
                   return left_[static_cast<std::size_t>(entry.wanted)] >= entry.count;
               });
    }

    void fix(std::size_t place) {
        const Pattern& pattern = pool_[place];
        if (!proper(pattern)) return;
        account(pattern, 1);
        plan_.push_back(pattern);
    }

    void take_back() {
        account(plan_.back(), -1);
        plan_.pop_back();
    }

    void account(const Pattern& pattern, int sign) {
        for (const auto& entry : pattern.entries) {
            left_[static_cast<std::size_t>(entry.wanted)] -= sign * entry.count;
            pieces_ -= sign * entry.count;
        }
        Bar& bar = bars_[static_cast<std::size_t>(pattern.bar)];
        bar.available -= sign;
        cost_ += sign * bar.cost;
    }

    const Cover& cover_;
    std::vector<Pattern>& pool_;
    Amount limit_;
    int wild_;
    Random& random_;
    long& work_;
    std::vector<Bar> bars_;
    std::vector<int> left_;
    int pieces_ = 0;
    Amount cost_ = 0;
    std::vector<Pattern> plan_;
    int failures_ = 0;
};

}  // namespace

std::vector<Pattern> dive(const Cover& cover, std::vector<Pattern>& pool, Amount limit, int wild,
                          Random& random, long& work) {
    return Dive(cover, pool, limit, wild, random, work).run();
}

}  // namespace rodwright::cutting::linear
