#include "compiler/workplan/schedule/outlook.hpp"

#include <algorithm>
#include <numeric>

namespace rodwright::schedule {

Outlook::Outlook(const Network& network)
    : network_(&network),
      urgent_(network.size()),
      heaviest_before_(network.size()),
      heaviest_from_(network.size()) {
    std::iota(urgent_.begin(), urgent_.end(), std::size_t{0});
    std::stable_sort(urgent_.begin(), urgent_.end(),
                     [&](std::size_t a, std::size_t b) { return network.tail(a) > network.tail(b); });
}

void Outlook::look(const Partial& partial) {
    const Progress& progress = partial.progress();
    left_.clear();
    loads_.clear();
    counted_.clear();
    for (std::size_t set_up = 0; set_up < network_->set_ups(); ++set_up) {
        counted_.push_back(!partial.to_make(*network_, set_up));
    }
    for (const std::size_t task : urgent_) {
        if (!partial.taken(task)) take_up(task);
    }
    find_heaviest();
    find_longest();
    clocks_ = 0;
    for (std::size_t worker = 0; worker < network_->workers(); ++worker) {
        free_[worker] = progress.free(worker);
        clocks_ += free_[worker];
    }
}

// Whoever of the tasks with one set-up is the most urgent carries it.
void Outlook::take_up(std::size_t number) {
    const Task& task = (*network_)[number];
    Seconds work = (loads_.empty() ? 0 : loads_.back().work) + task.work;
    if (task.set_up != none && !counted_[task.set_up]) {
        counted_[task.set_up] = true;
        work += task.set_up_work;
    }
    left_.push_back(number);
    loads_.push_back({work, network_->tail(number)});
}

Seconds Outlook::weight(const Load& load) const {
    return network_->calendar().stretched(load.work / static_cast<Seconds>(network_->workers())) + load.tail;
}

void Outlook::find_heaviest() {
    const auto heavier = [this](const Load& a, const Load& b) { return weight(a) >= weight(b) ? a : b; };
    Load heaviest;
    for (std::size_t i = 0; i < left_.size(); ++i) {
        heaviest_before_[left_[i]] = heaviest;
        heaviest = heavier(heaviest, loads_[i]);
    }
    heaviest = {};
    for (std::size_t i = left_.size(); i-- > 0;) {
        heaviest = heavier(heaviest, loads_[i]);
        heaviest_from_[left_[i]] = heaviest;
    }
}

void Outlook::find_longest() {
    longest_ = {none, none};
    const auto length = [this](std::size_t task) {
        return task == none ? -1 : (*network_)[task].work + network_->tail(task);
    };
    for (const std::size_t task : left_) {
        if (length(task) > length(longest_[0])) {
            longest_ = {task, longest_[0]};
        } else if (length(task) > length(longest_[1])) {
            longest_[1] = task;
        }
    }
}

Seconds Outlook::end_of(Seconds now, const Load& load) const {
    return network_->calendar().end(now, load.work / static_cast<Seconds>(network_->workers())) + load.tail;
}

Seconds Outlook::after(const Placing& placing, Seconds more) const {
    const Task& task = (*network_)[placing.task];
    const Seconds now =
        (clocks_ - free_[placing.worker] + placing.end) / static_cast<Seconds>(network_->workers());
    Load from = heaviest_from_[placing.task];
    from.work += more - task.work - (placing.sets_up ? task.set_up_work : 0);
    from.work = std::max(from.work, Seconds{0});
    Seconds estimate = std::max(end_of(now, heaviest_before_[placing.task]), end_of(now, from));
    const std::size_t next = longest_[0] == placing.task ? longest_[1] : longest_[0];
    if (next != none) {
        const Seconds other = network_->workers() == 1 ? placing.end : free_[1 - placing.worker];
        const Seconds first = std::min(placing.end, other);
        estimate = std::max(estimate, first + (*network_)[next].work + network_->tail(next));
    }
    return estimate;
}

}  // namespace rodwright::schedule
