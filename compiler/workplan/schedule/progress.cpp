#include "compiler/workplan/schedule/progress.hpp"

#include <algorithm>

namespace rodwright::schedule {

Progress::Progress(const Network& network, Seconds enough)
    : workers_(network.workers()), machines_(network.machines()), ready_(network.size(), 0), enough_(enough) {
    figures_.makespan = enough;
}

Placing Progress::place_with(const Network& network, std::size_t number, std::size_t worker) const {
    const Task& task = network[number];
    Placing placing;
    placing.task = number;
    placing.worker = worker;
    Seconds earliest = workers_[worker].free;
    Seconds set_up_work = 0;
    if (task.machine != none) {
        const Machine& machine = machines_[task.machine];
        earliest = std::max(earliest, machine.free);
        placing.sets_up = machine.loaded != task.set_up;
        if (placing.sets_up) set_up_work = task.set_up_work;
    }
    earliest = std::max(earliest, ready_[number] - set_up_work);
    const Calendar& calendar = network.calendar();
    placing.begin = calendar.begin(earliest, set_up_work + task.work);
    placing.work_begins = calendar.end(placing.begin, set_up_work);
    placing.end = calendar.end(placing.begin, set_up_work + task.work);
    placing.shared = network.shared(workers_[worker].last, number);
    return placing;
}

Placing Progress::place(const Network& network, std::size_t task) const {
    Placing best = place_with(network, task, 0);
    if (workers_.size() == 1) return best;
    const Placing other = place_with(network, task, 1);
    const auto better_first = [this](const Placing& p) {
        return std::tuple(p.begin, -static_cast<std::int64_t>(p.shared), -workers_[p.worker].free);
    };
    return better_first(other) < better_first(best) ? other : best;
}

void Progress::take(const Network& network, const Placing& placing) {
    const Task& task = network[placing.task];
    workers_[placing.worker] = {placing.end, placing.task};
    if (task.machine != none) machines_[task.machine] = {placing.end, task.set_up};
    for (const Link& link : task.after) {
        ready_[link.task] = std::max(ready_[link.task], placing.end + link.wait);
    }
    ready_[placing.task] = 0;
    figures_.makespan = std::max(figures_.makespan, placing.end + task.rest);
    const Seconds reached = placing.end + network.tail(placing.task);
    chain_ = std::max(chain_, reached);
    lateness_ += std::max(Seconds{0}, reached - enough_);
    figures_.set_ups += placing.sets_up ? 1U : 0U;
    figures_.handling += static_cast<std::int64_t>(network.parts(placing.task) - placing.shared);
    figures_.displacement += taken_ > placing.task ? taken_ - placing.task : placing.task - taken_;
    ++taken_;
}

bool Progress::as_early_as(const Progress& other) const {
    // Times before the one at which anybody is free make no difference.
    const auto first_free = [](const Progress& p) {
        return std::min(p.workers_.front().free, p.workers_.back().free);
    };
    const Seconds now = first_free(other);
    const auto early = [now](Seconds own, Seconds others) { return own <= std::max(now, others); };
    const bool swapped = workers_.front().last != other.workers_.front().last;
    for (std::size_t i = 0; i < workers_.size(); ++i) {
        const Worker& others = other.workers_[swapped ? workers_.size() - 1 - i : i];
        if (!early(workers_[i].free, others.free)) return false;
    }
    for (std::size_t i = 0; i < machines_.size(); ++i) {
        if (!early(machines_[i].free, other.machines_[i].free)) return false;
    }
    for (std::size_t i = 0; i < ready_.size(); ++i) {
        if (!early(ready_[i], other.ready_[i])) return false;
    }
    return figures_.makespan <= other.figures_.makespan;
}

}  // namespace rodwright::schedule
