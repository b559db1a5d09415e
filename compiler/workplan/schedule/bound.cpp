#include "compiler/workplan/schedule/bound.hpp"

#include <algorithm>
#include <limits>

#include "compiler/workplan/schedule/chain.hpp"
#include "compiler/workplan/schedule/task_sets.hpp"

namespace rodwright::schedule {
namespace {

// Heads and tails are made longer where there are no more tasks than this: the time grows with their cube.
constexpr std::size_t lengthened_tasks = 600;
// Of the heads that may begin a set at most so many are tried: any of them gives a bound.
constexpr std::size_t tried_heads = 400;
constexpr std::size_t tried_heads_of_one = 24;

class Bounds {
  public:
    explicit Bounds(const Network& network)
        : network_(network), chain_(longest_chain(network)), heads_(chain_.begins), sets_(network) {
        for (std::size_t i = 0; i < network.size(); ++i) tails_.push_back(network.tail(i));
        uses_.assign(network.set_ups(), 0);
        for (const Task& task : network.tasks()) {
            if (task.set_up != none) ++uses_[task.set_up];
        }
    }

    Bound bound() {
        if (network_.size() <= lengthened_tasks) {
            find_lags();
            find_set_up_heads();
            for (std::size_t i = 0; i < network_.size(); ++i) lengthen_head(i);
            for (std::size_t i = network_.size(); i-- > 0;) lengthen_tail(i);
        }
        Bound bound = best(fullest_of_all());
        if (network_.calendar().has_nights() && refuted(bound.makespan)) {
            bound.makespan = grown(bound.makespan);
        }
        return bound;
    }

  private:
    void find_lags();
    void lengthen_head(std::size_t task);
    void lengthen_tail(std::size_t task);
    Seconds block_head(std::size_t task) const;
    Fullest fullest_of_all();
    bool refuted(Seconds makespan);
    Seconds grown(Seconds bound);
    Bound best(const Fullest& fullest) const;
    std::vector<std::size_t> jobs_of(const std::vector<std::size_t>& tasks) const;

    void find_set_up_heads();

    Seconds& lag(std::size_t from, std::size_t to) { return lags_[from * network_.size() + to]; }

    const Network& network_;
    Chain chain_;
    std::vector<Seconds> heads_;  // of the work
    std::vector<Seconds> tails_;
    std::vector<Seconds> lags_;  // from the end of one to the begin of the other at least; -1: not in a row
    std::vector<std::size_t> uses_;
    std::vector<Seconds> set_up_heads_;  // before which none of its tasks makes the set-up
    TaskSets sets_;
};

void Bounds::find_lags() {
    const std::size_t size = network_.size();
    lags_.assign(size * size, -1);
    for (std::size_t from = 0; from < size; ++from) {
        for (const Link& link : network_[from].after) lag(from, link.task) = link.wait;
        for (std::size_t to = from + 1; to < size; ++to) {
            if (lag(from, to) < 0) continue;
            const Seconds end = lag(from, to) + network_[to].work;
            for (const Link& link : network_[to].after) {
                lag(from, link.task) = std::max(lag(from, link.task), end + link.wait);
            }
        }
    }
}

void Bounds::find_set_up_heads() {
    set_up_heads_.assign(network_.set_ups(), std::numeric_limits<Seconds>::max());
    for (std::size_t i = 0; i < network_.size(); ++i) {
        if (network_[i].set_up == none) continue;
        Seconds& head = set_up_heads_[network_[i].set_up];
        head = std::min(head, block_head(i));
    }
}

Seconds Bounds::block_head(std::size_t task) const {
    return std::max(Seconds{0}, heads_[task] - network_[task].set_up_work);
}

// All that must come before a task, and the ways from there to it.
void Bounds::lengthen_head(std::size_t task) {
    for (const Link& link : network_[task].before) {
        const Seconds end = network_.calendar().end(heads_[link.task], network_[link.task].work);
        heads_[task] = std::max(heads_[task], end + link.wait);
    }
    std::vector<Member> members;
    for (std::size_t i = 0; i < task; ++i) {
        if (lag(i, task) >= 0) members.push_back({i, block_head(i), lag(i, task)});
    }
    const Seconds ready =
        sets_.fullest(members, set_up_heads_, TaskSets::Clock::of_day, tried_heads_of_one).bound;
    heads_[task] = earliest_work(network_, network_[task], std::max(heads_[task], ready));
}

// All that must come after a task, on a clock that is 0 at its end. A set-up surely comes after it too if all
// its tasks do.
void Bounds::lengthen_tail(std::size_t task) {
    for (const Link& link : network_[task].after) {
        tails_[task] = std::max(tails_[task], link.wait + network_[link.task].work + tails_[link.task]);
    }
    std::vector<Member> members;
    std::vector<std::size_t> uses(network_.set_ups(), 0);
    set_up_heads_.assign(network_.set_ups(), std::numeric_limits<Seconds>::max());
    for (std::size_t i = task + 1; i < network_.size(); ++i) {
        if (lag(task, i) < 0) continue;
        // Another worker may set up already before the task's end.
        Seconds head = lag(task, i) - network_[i].set_up_work;
        if (network_.workers() == 1) head = std::max(Seconds{0}, head);
        members.push_back({i, head, tails_[i]});
        const std::size_t set_up = network_[i].set_up;
        if (set_up == none) continue;
        ++uses[set_up];
        set_up_heads_[set_up] = std::min(set_up_heads_[set_up], head);
    }
    for (std::size_t set_up = 0; set_up < uses.size(); ++set_up) {
        if (uses[set_up] < uses_[set_up]) set_up_heads_[set_up] = std::numeric_limits<Seconds>::min();
    }
    const Fullest fullest =
        sets_.fullest(members, set_up_heads_, TaskSets::Clock::from_any_time, tried_heads_of_one);
    tails_[task] = std::max(tails_[task], fullest.bound);
}

Fullest Bounds::fullest_of_all() {
    std::vector<Member> members;
    for (std::size_t i = 0; i < network_.size(); ++i) members.push_back({i, block_head(i), tails_[i]});
    find_set_up_heads();
    return sets_.fullest(members, set_up_heads_, TaskSets::Clock::of_day, tried_heads);
}

// Whether some tasks cannot be done in time for all to be done at `makespan`: their work ends too late after
// their heads.
bool Bounds::refuted(Seconds makespan) {
    const std::vector<Seconds> latest = latest_ends(network_, makespan);
    const Calendar& calendar = network_.calendar();
    std::vector<Member> members;
    for (std::size_t i = 0; i < network_.size(); ++i) {
        const Seconds last = std::min(latest[i], makespan - tails_[i]);
        if (calendar.end(heads_[i], network_[i].work) > last) return true;
        members.push_back({i, block_head(i), -last});
    }
    return sets_.fullest(members, set_up_heads_, TaskSets::Clock::of_day, tried_heads_of_one).bound > 0;
}

// Tails know nothing of nights, so with nights a bound grows as long as it can be refuted (R. Klein, A.
// Scholl, "Computing lower bounds by destructive improvement", European Journal of Operational Research 112,
// 1999, 322-346).
Seconds Bounds::grown(Seconds bound) {
    Seconds step = 1;
    while (refuted(bound + step - 1)) step *= 2;
    Seconds least = bound + step / 2;  // all below are refuted, and bound + step - 1 is not
    Seconds most = bound + step - 1;
    while (least < most) {
        const Seconds middle = least + (most - least) / 2;
        if (refuted(middle)) {
            least = middle + 1;
        } else {
            most = middle;
        }
    }
    return least;
}

std::vector<std::size_t> Bounds::jobs_of(const std::vector<std::size_t>& tasks) const {
    std::vector<std::size_t> jobs;
    for (const std::size_t task : tasks) jobs.push_back(network_[task].job);
    return jobs;
}

Bound Bounds::best(const Fullest& fullest) const {
    Bound bound;
    bound.set_ups = static_cast<std::size_t>(
        std::count_if(uses_.begin(), uses_.end(), [](std::size_t uses) { return uses > 0; }));
    bound.makespan = std::max(chain_.makespan, fullest.bound);
    if (chain_.makespan >= fullest.bound) {
        bound.reason = Bound::Reason::chain;
        bound.jobs = jobs_of(chain_.tasks);
        return bound;
    }
    for (std::size_t i = 0; i < network_.size(); ++i) {
        if (block_head(i) >= fullest.head && tails_[i] >= fullest.tail) bound.jobs.push_back(network_[i].job);
    }
    std::sort(bound.jobs.begin(), bound.jobs.end());
    const bool all = bound.jobs.size() == network_.size();
    bound.reason = all ? Bound::Reason::work : Bound::Reason::between;
    return bound;
}

}  // namespace

Bound lower_bound(const Network& network) {
    return Bounds(network).bound();
}

}  // namespace rodwright::schedule
