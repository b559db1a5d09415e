#include "compiler/stock/cutting/linear/dive.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "compiler/stock/cutting/linear/column_generation.hpp"

namespace rodwright::cutting::linear {
namespace {

// One in so many of the fractional patterns is fixed at once.
constexpr std::size_t share_fixed = 12;

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
        while (pieces_ > 0) {
            if (!fix_some()) return {};
        }
        return std::move(plan_);
    }

  private:
    bool fix_some() {
        Residual residual = residual_of(cover_, left_);
        residual.cover.bars = bars_;
        Master master(residual.cover);
        add_pool(residual, master);
        std::vector<Pattern> fresh;
        work_ += generate_columns(residual.cover, master, fresh);
        for (Pattern pattern : fresh) {
            for (auto& entry : pattern.entries)
                entry.wanted = residual.whole[static_cast<std::size_t>(entry.wanted)];
            pool_.push_back(std::move(pattern));
        }
        if (!master.feasible() ||
            static_cast<double>(cost_) + master.objective() > static_cast<double>(limit_) + 0.01) {
            return false;
        }
        return fix_from(residual, master);
    }

    // Patterns that ask for no more than is left.
    void add_pool(const Residual& residual, Master& master) const {
        for (const Pattern& pattern : pool_) {
            Pattern own = pattern;
            bool proper = bars_[static_cast<std::size_t>(pattern.bar)].available > 0;
            for (auto& entry : own.entries) {
                if (left_[static_cast<std::size_t>(entry.wanted)] < entry.count) proper = false;
                entry.wanted = residual.own[static_cast<std::size_t>(entry.wanted)];
            }
            if (proper) master.add(own);
        }
    }

    // All whole parts of the amounts, or one more of each of the patterns with the greatest fractions.
    bool fix_from(const Residual& residual, const Master& master) {
        const std::vector<double> amounts = master.amounts();
        std::vector<std::pair<double, std::size_t>> fractions;
        bool any = false;
        for (std::size_t p = 0; p < amounts.size(); ++p) {
            if (amounts[p] < 1e-4) continue;
            const int whole = static_cast<int>(std::floor(amounts[p] + 1e-4));
            for (int i = 0; i < whole && fix(residual, master.patterns()[p]); ++i) any = true;
            fractions.emplace_back(whole - amounts[p] - 0.01 * random_.below(wild_ + 1), p);
        }
        if (any) return true;
        std::sort(fractions.begin(), fractions.end());
        const std::size_t most = 1 + fractions.size() / share_fixed;
        for (std::size_t i = 0; i < std::min(most, fractions.size()); ++i) {
            any = fix(residual, master.patterns()[fractions[i].second]) || any;
        }
        return any;
    }

    bool fix(const Residual& residual, const Pattern& pattern) {
        Pattern whole = pattern;
        Bar& bar = bars_[static_cast<std::size_t>(pattern.bar)];
        bool proper = bar.available > 0;
        for (auto& entry : whole.entries) {
            entry.wanted = residual.whole[static_cast<std::size_t>(entry.wanted)];
            if (left_[static_cast<std::size_t>(entry.wanted)] < entry.count) proper = false;
        }
        if (!proper) return false;
        for (const auto& entry : whole.entries) {
            left_[static_cast<std::size_t>(entry.wanted)] -= entry.count;
            pieces_ -= entry.count;
        }
        --bar.available;
        cost_ += bar.cost;
        plan_.push_back(std::move(whole));
        return true;
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
};

}  // namespace

std::vector<Pattern> dive(const Cover& cover, std::vector<Pattern>& pool, Amount limit, int wild,
                          Random& random, long& work) {
    return Dive(cover, pool, limit, wild, random, work).run();
}

}  // namespace rodwright::cutting::linear
