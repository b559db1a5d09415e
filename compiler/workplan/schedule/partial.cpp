#include "compiler/workplan/schedule/partial.hpp"

#include <algorithm>

#include "compiler/stock/cutting/random.hpp"

namespace rodwright::schedule {

Partial::Partial(const Network& network, Seconds enough)
    : progress_(network, enough),
      left_(network.set_ups(), 0),
      blockers_(network.size(), 0),
      blocked_left_(network.set_ups(), 0) {
    for (std::uint32_t i = 0; i < network.size(); ++i) {
        const Task& task = network[i];
        open_.push_back(static_cast<std::uint32_t>(task.before.size()));
        if (task.before.empty()) available_.push_back(i);
        if (task.set_up != none && left_[task.set_up]++ == 0) ++to_make_;
        for (const std::size_t later : task.blocks) {
            if (blockers_[later]++ == 0) ++blocked_left_[network[later].set_up];
        }
    }
}

bool Partial::to_make(const Network& network, std::size_t set_up) const {
    const bool loaded = progress_.loaded(network.machine_of(set_up)) == set_up;
    return (loaded ? blocked_left_[set_up] : left_[set_up]) > 0;
}

Partial::Change Partial::change(const Network& network, const Placing& placing) const {
    Change change{to_make_};
    if (!placing.sets_up) return change;
    const Task& task = network[placing.task];
    if (blocked_left_[task.set_up] > 0) {
        change.work += task.set_up_work;
    } else {
        --change.sets_to_make;
    }
    const std::size_t undone = progress_.loaded(task.machine);
    if (undone == none || left_[undone] == 0 || blocked_left_[undone] > 0) return change;
    change.work += network.set_up_work(undone);
    ++change.sets_to_make;
    return change;
}

void Partial::take(const Network& network, const Placing& placing) {
    const Task& task = network[placing.task];
    to_make_ = change(network, placing).sets_to_make;
    progress_.take(network, placing);
    if (task.set_up != none) --left_[task.set_up];
    for (const std::size_t later : task.blocks) {
        if (--blockers_[later] == 0) --blocked_left_[network[later].set_up];
    }
    parts_ += static_cast<std::int64_t>(network.parts(placing.task));
    open_[placing.task] = done;
    std::erase(available_, placing.task);
    for (const Link& link : task.after) {
        if (--open_[link.task] > 0) continue;
        const auto next = static_cast<std::uint32_t>(link.task);
        available_.insert(std::lower_bound(available_.begin(), available_.end(), next), next);
    }
}

// A machine whose set-up nobody asks for any more is as good as empty.
std::uint64_t Partial::key(const Network& network, const std::vector<std::uint64_t>& keys) const {
    std::uint64_t key = 0;
    for (std::size_t task = 0; task < open_.size(); ++task) {
        if (taken(task)) key ^= keys[task];
    }
    const auto mix = [&](std::size_t value) { key = cutting::Random(key ^ (value + 1)).next(); };
    for (std::size_t machine = 0; machine < network.machines(); ++machine) {
        const std::size_t loaded = progress_.loaded(machine);
        mix(loaded != none && left_[loaded] > 0 ? loaded : none);
    }
    // Which one of two workers did a task last makes no difference.
    const std::size_t one = progress_.last_task(0);
    const std::size_t other = progress_.last_task(network.workers() - 1);
    mix(std::min(one, other));
    mix(std::max(one, other));
    return key;
}

bool Partial::as_good_as(const Partial& other) const {
    const auto lesser = [](const Figures& f) { return std::tuple(f.set_ups, f.handling, f.displacement); };
    return lesser(progress_.figures()) <= lesser(other.progress_.figures()) &&
           progress_.as_early_as(other.progress_);
}

}  // namespace rodwright::schedule
