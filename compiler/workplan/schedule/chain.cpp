#include "compiler/workplan/schedule/chain.hpp"

#include <algorithm>

namespace rodwright::schedule {

Seconds earliest_work(const Network& network, const Task& task, Seconds ready) {
    const Calendar& calendar = network.calendar();
    return calendar.fits_day(task.set_up_work + task.work) ? calendar.begin(ready, task.work) : ready;
}

Chain longest_chain(const Network& network) {
    Chain chain;
    std::vector<std::size_t> from(network.size(), none);
    std::size_t last = none;
    chain.begins.assign(network.size(), 0);
    std::vector<Seconds> ends(network.size(), 0);
    for (std::size_t i = 0; i < network.size(); ++i) {
        const Task& task = network[i];
        chain.begins[i] = network.calendar().end(0, task.set_up_work);
        for (const Link& link : task.before) {
            const Seconds ready = ends[link.task] + link.wait;
            if (ready < chain.begins[i]) continue;
            chain.begins[i] = ready;
            from[i] = link.task;
        }
        chain.begins[i] = earliest_work(network, task, chain.begins[i]);
        ends[i] = network.calendar().end(chain.begins[i], task.work);
        if (last != none && ends[i] + task.rest <= chain.makespan) continue;
        chain.makespan = ends[i] + task.rest;
        last = i;
    }
    for (std::size_t i = last; i != none; i = from[i]) chain.tasks.push_back(i);
    std::reverse(chain.tasks.begin(), chain.tasks.end());
    return chain;
}

std::vector<Seconds> latest_ends(const Network& network, Seconds makespan) {
    const Calendar& calendar = network.calendar();
    std::vector<Seconds> latest(network.size());
    for (std::size_t i = network.size(); i-- > 0;) {
        latest[i] = makespan - network[i].rest;
        for (const Link& link : network[i].after) {
            const Task& next = network[link.task];
            const Seconds end = std::max(Seconds{0}, latest[link.task]);
            const bool fits = calendar.fits_day(next.set_up_work + next.work);
            const Seconds begin = fits ? calendar.latest_begin_within_day(end, next.work)
                                       : calendar.latest_begin(end, next.work);
            latest[i] = std::min(latest[i], begin - link.wait);
        }
    }
    return latest;
}

}  // namespace rodwright::schedule
