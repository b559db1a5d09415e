#include "compiler/workplan/schedule/improve.hpp"

#include <algorithm>
#include <optional>
#include <tuple>

#include "compiler/stock/cutting/random.hpp"

namespace rodwright::schedule {
namespace {

class Improvement {
  public:
    Improvement(const Network& network, Seconds enough, Found found)
        : network_(network), found_(std::move(found)), random_(network.size()), progress_(network, enough) {
        by_set_up_.resize(network.set_ups());
        for (std::size_t i = 0; i < network.size(); ++i) {
            if (network[i].set_up != none) by_set_up_[network[i].set_up].push_back(i);
        }
        for (std::size_t i = 0; i < network.size(); ++i) {
            if (i % stride == 0) saved_.push_back(progress_);
            progress_.take(network, progress_.place(network, found_.order[i]));
        }
        trial_saved_ = saved_;
        worth_ = worth_of(progress_);
    }

    // First anything goes that costs neither time nor set-ups: a set-up is saved only after all its tasks
    // have moved.
    Found run(std::size_t moves) {
        const Found start = found_;
        const auto roughly = [](const Worth& w) {
            return std::tuple(w.figures.makespan, w.lateness, w.figures.set_ups);
        };
        const auto exactly = [](const Worth& w) { return w.figures; };
        for (std::size_t i = 0; i < moves / 2; ++i) try_move(roughly);
        for (std::size_t i = moves / 2; i < moves; ++i) try_move(exactly);
        if (start.figures < worth_.figures) return start;
        found_.figures = worth_.figures;
        return found_;
    }

  private:
    static constexpr std::size_t stride = 24;

    // A makespan says nothing of all tasks but the last ones, and with nights changes by whole days.
    struct Worth {
        Figures figures;
        Seconds lateness = 0;
    };

    template <typename View>
    void try_move(View view) {
        const std::size_t from = random_index(network_.size());
        const std::size_t to = target(from);
        if (from == to) return;
        trial_ = found_.order;
        choose_group(from);
        const std::size_t changed = move_group(from, to);
        const std::optional<Worth> worth = try_order(changed, view);
        if (!worth) return;
        worth_ = *worth;
        std::swap(found_.order, trial_);
        for (std::size_t i = changed / stride + 1; i < saved_.size(); ++i)
            std::swap(saved_[i], trial_saved_[i]);
    }

    // A task by itself, or all with its set-up that stand beside it.
    void choose_group(std::size_t from) {
        group_ = {found_.order[from]};
        const std::size_t set_up = network_[group_.front()].set_up;
        if (set_up == none || random_.one_in(2)) return;
        for (std::size_t i = from; i-- > 0 && network_[found_.order[i]].set_up == set_up;) {
            group_.push_back(found_.order[i]);
        }
        for (std::size_t i = from + 1; i < network_.size() && network_[found_.order[i]].set_up == set_up;
             ++i) {
            group_.push_back(found_.order[i]);
        }
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

    static Worth worth_of(const Progress& progress) { return {progress.figures(), progress.lateness()}; }

    // The worth of trial_, which differs from found_.order from `changed` on; nothing if it is worse. No
    // figure ever gets smaller, so that can be known early.
    template <typename View>
    std::optional<Worth> try_order(std::size_t changed, View view) {
        const std::size_t first = changed / stride;
        progress_ = saved_[first];
        for (std::size_t i = first * stride; i < trial_.size(); ++i) {
            if (i % stride == 0 && i > first * stride) {
                if (view(worth_of(progress_)) > view(worth_)) return std::nullopt;
                trial_saved_[i / stride] = progress_;
            }
            progress_.take(network_, progress_.place(network_, trial_[i]));
        }
        const Worth worth = worth_of(progress_);
        if (view(worth) > view(worth_)) return std::nullopt;
        return worth;
    }

    // What has to come before the group goes along to the front, what has to come after it to the back.
    // Gives back the first place that changed.
    std::size_t move_group(std::size_t from, std::size_t to) {
        const auto at = [&](std::size_t i) { return trial_.begin() + static_cast<std::ptrdiff_t>(i); };
        const auto in_group = [&](std::size_t t) {
            return std::find(group_.begin(), group_.end(), t) != group_.end();
        };
        const std::size_t end = from + group_.size();
        if (to < from) {
            std::stable_partition(at(to), at(std::min(end, network_.size())), [&](std::size_t t) {
                return in_group(t) || std::any_of(group_.begin(), group_.end(),
                                                  [&](std::size_t g) { return network_.precedes(t, g); });
            });
            return to;
        }
        const std::size_t begin = from < group_.size() ? 0 : from + 1 - group_.size();
        std::stable_partition(at(begin), at(to + 1), [&](std::size_t t) {
            return !in_group(t) && std::none_of(group_.begin(), group_.end(),
                                                [&](std::size_t g) { return network_.precedes(g, t); });
        });
        return begin;
    }

    const Network& network_;
    Found found_;
    Worth worth_;  // of found_.order
    cutting::Random random_;
    std::vector<Progress> saved_;  // of found_.order before every stride-th task
    std::vector<std::size_t> trial_;
    std::vector<Progress> trial_saved_;
    Progress progress_;
    std::vector<std::size_t> group_;  // tasks to be moved
    std::vector<std::vector<std::size_t>> by_set_up_;
};

}  // namespace

Found improve(const Network& network, Seconds enough, Found found, std::size_t moves) {
    return Improvement(network, enough, std::move(found)).run(moves);
}

}  // namespace rodwright::schedule
