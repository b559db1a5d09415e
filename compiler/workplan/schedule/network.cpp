#include "compiler/workplan/schedule/network.hpp"

#include <algorithm>
#include <numeric>
#include <queue>

namespace rodwright::schedule {
namespace {

// Jobs by rank and number as far as precedences allow; shorter than the jobs if they go in a circle.
std::vector<std::size_t> order_by_rank(const Problem& problem) {
    std::vector<std::vector<std::size_t>> after(problem.jobs.size());
    std::vector<std::size_t> open(problem.jobs.size(), 0);
    for (const Precedence& p : problem.precedences) {
        after[p.before].push_back(p.after);
        ++open[p.after];
    }
    const auto later = [&](std::size_t a, std::size_t b) {
        return std::pair(problem.jobs[a].rank, a) > std::pair(problem.jobs[b].rank, b);
    };
    std::priority_queue<std::size_t, std::vector<std::size_t>, decltype(later)> ready(later);
    for (std::size_t job = 0; job < problem.jobs.size(); ++job) {
        if (open[job] == 0) ready.push(job);
    }
    std::vector<std::size_t> order;
    while (!ready.empty()) {
        const std::size_t job = ready.top();
        ready.pop();
        order.push_back(job);
        for (const std::size_t next : after[job]) {
            if (--open[next] == 0) ready.push(next);
        }
    }
    return order;
}

std::size_t count_common(const std::vector<std::size_t>& a, const std::vector<std::size_t>& b) {
    std::size_t count = 0;
    for (auto i = a.begin(), k = b.begin(); i != a.end() && k != b.end();) {
        count += *i == *k ? 1U : 0U;
        const bool advance_a = *i <= *k;
        if (*k <= *i) ++k;
        if (advance_a) ++i;
    }
    return count;
}

}  // namespace

std::optional<Network> Network::make(const Problem& problem) {
    const std::vector<std::size_t> order = order_by_rank(problem);
    if (order.size() < problem.jobs.size()) return std::nullopt;
    return Network(problem, order);
}

Network::Network(const Problem& problem, const std::vector<std::size_t>& order)
    : calendar_(problem.day), workers_(problem.workers), set_ups_(problem.set_ups) {
    std::vector<std::size_t> task_of(order.size());
    for (const std::size_t number : order) {
        const Job& job = problem.jobs[number];
        Task task;
        task.job = number;
        task.work = job.work;
        task.rest = job.rest;
        if (job.set_up) {
            task.set_up = *job.set_up;
            task.machine = problem.set_ups[task.set_up].machine;
            task.set_up_work = problem.set_ups[task.set_up].work;
        }
        task_of[number] = tasks_.size();
        tasks_.push_back(std::move(task));
        parts_.push_back(job.parts);
    }
    for (const SetUp& set_up : problem.set_ups) {
        machines_ = std::max(machines_, set_up.machine + 1);
    }
    for (const Precedence& p : problem.precedences) {
        tasks_[task_of[p.before]].after.push_back({task_of[p.after], p.wait});
    }
    if (size() <= searched_tasks) {
        tidy_links();
        count_shared_parts();
    }
    for (std::size_t i = 0; i < size(); ++i) {
        for (const Link& link : tasks_[i].after) tasks_[link.task].before.push_back({i, link.wait});
    }
    find_tails();
}

// Last tasks first, so that links of what comes later are tidy already.
void Network::tidy_links() {
    precedes_.assign(size() * size(), false);
    std::vector<Seconds> lag(size());
    for (std::size_t from = size(); from-- > 0;) tidy_links_of(from, lag);
}

// `lag`: from the end of `from` to the begin of the work of each that comes later, the longest way; -1 for
// others.
void Network::tidy_links_of(std::size_t from, std::vector<Seconds>& lag) {
    // The longest direct link first, so that of several to one task only that one stays.
    std::vector<Link> links = std::move(tasks_[from].after);
    std::sort(links.begin(), links.end(), [](const Link& a, const Link& b) {
        return std::pair(a.task, -a.wait) < std::pair(b.task, -b.wait);
    });
    Task& task = tasks_[from];
    task.after.clear();
    std::fill(lag.begin(), lag.end(), -1);
    auto link = links.begin();
    for (std::size_t to = from + 1; to < size(); ++to) {
        const Seconds round = lag[to];
        for (; link != links.end() && link->task == to; ++link) lag[to] = std::max(lag[to], link->wait);
        if (lag[to] < 0) continue;
        precedes_[from * size() + to] = true;
        if (task.machine != none && task.machine == tasks_[to].machine && task.set_up != tasks_[to].set_up) {
            // The machine is set up anew in between.
            lag[to] = std::max(lag[to], tasks_[to].set_up_work);
            task.blocks.push_back(to);
        }
        if (lag[to] > round) task.after.push_back({to, lag[to]});
        for (const Link& next : tasks_[to].after) {
            lag[next.task] = std::max(lag[next.task], lag[to] + tasks_[to].work + next.wait);
        }
    }
}

void Network::find_tails() {
    tails_.assign(size(), 0);
    for (std::size_t i = size(); i-- > 0;) {
        tails_[i] = tasks_[i].rest;
        for (const Link& link : tasks_[i].after) {
            tails_[i] = std::max(tails_[i], link.wait + tasks_[link.task].work + tails_[link.task]);
        }
    }
}

void Network::count_shared_parts() {
    shared_.resize(size() * size());
    for (std::size_t i = 0; i < size(); ++i) {
        for (std::size_t k = i; k < size(); ++k) {
            const auto count = static_cast<std::uint32_t>(count_common(parts_[i], parts_[k]));
            shared_[i * size() + k] = shared_[k * size() + i] = count;
        }
    }
}

std::size_t Network::shared(std::size_t last, std::size_t next) const {
    if (last == none) return 0;
    return shared_.empty() ? count_common(parts_[last], parts_[next]) : shared_[last * size() + next];
}

std::vector<std::size_t> natural_order(const Network& network) {
    std::vector<std::size_t> order(network.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    return order;
}

}  // namespace rodwright::schedule
