#include "compiler/work/schedule/improve.hpp"

#include <algorithm>

#include "compiler/stock/cutting/random.hpp"

namespace rodwright::schedule {
namespace {

class Improvement {
  public:
    Improvement(const Network& network, Seconds enough, Found found)
        : network_(network), enough_(enough), found_(std::move(found)), random_(network.size()) {
        by_set_up_.resize(network.set_ups());
        for (std::size_t i = 0; i < network.size(); ++i) {
            if (network[i].set_up != none) by_set_up_[network[i].set_up].push_back(i);
        }
    }

    Found run(std::size_t trials) {
        for (std::size_t i = 0; i < trials; ++i) try_move();
        return found_;
    }

  private:
    void try_move() {
        const std::size_t from = random_index(network_.size());
        const std::size_t to = target(from);
        if (from == to) return;
        trial_ = found_.order;
        move(from, to);
        const Figures figures = figures_of(trial_);
        if (figures > found_.figures) return;
        found_.figures = figures;
        std::swap(found_.order, trial_);
    }

    std::size_t random_index(std::size_t size) {
        return static_cast<std::size_t>(random_.below(static_cast<int>(size)));
    }

    // Beside another task with the same set-up, or anywhere near.
    std::size_t target(std::size_t from) {
        const Task& task = network_[found_.order[from]];
        if (task.set_up != none && by_set_up_[task.set_up].size() > 1 && random_.one_in(2)) {
            const auto& others = by_set_up_[task.set_up];
            const std::size_t other = others[random_index(others.size())];
            const auto at = std::find(found_.order.begin(), found_.order.end(), other);
            return static_cast<std::size_t>(at - found_.order.begin());
        }
        const std::size_t reach = random_.one_in(2) ? 8 : network_.size();
        const std::size_t low = from > reach ? from - reach : 0;
        const std::size_t high = std::min(network_.size() - 1, from + reach);
        return low + random_index(high - low + 1);
    }

    Figures figures_of(const std::vector<std::size_t>& order) const {
        Progress progress(network_, enough_);
        for (const std::size_t task : order) progress.take(network_, progress.place(network_, task));
        return progress.figures();
    }

    void move(std::size_t from, std::size_t to) {
        const std::size_t task = trial_[from];
        const auto at = [&](std::size_t i) { return trial_.begin() + static_cast<std::ptrdiff_t>(i); };
        if (to < from) {
            std::stable_partition(at(to), at(from + 1),
                                  [&](std::size_t t) { return t == task || network_.precedes(t, task); });
        } else {
            std::stable_partition(at(from), at(to + 1),
                                  [&](std::size_t t) { return t != task && !network_.precedes(task, t); });
        }
    }

    const Network& network_;
    Seconds enough_;
    Found found_;
    cutting::Random random_;
    std::vector<std::size_t> trial_;
    std::vector<std::vector<std::size_t>> by_set_up_;
};

}  // namespace

Found improve(const Network& network, Seconds enough, Found found, std::size_t moves) {
    return Improvement(network, enough, std::move(found)).run(moves);
}

}  // namespace rodwright::schedule
