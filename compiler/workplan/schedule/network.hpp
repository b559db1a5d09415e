// A problem made ready for searching: its jobs renumbered in natural order, so that whatever must come before
// a job has a smaller number.
#pragma once

#include "compiler/workplan/schedule/calendar.hpp"

namespace rodwright::schedule {

inline constexpr std::size_t none = static_cast<std::size_t>(-1);

struct Link {
    std::size_t task = 0;
    Seconds wait = 0;
};

struct Task {
    std::size_t job = 0;  // its number in the problem
    Seconds work = 0;
    Seconds rest = 0;
    std::size_t set_up = none;
    std::size_t machine = none;
    Seconds set_up_work = 0;
    std::vector<Link> before, after;
    std::vector<std::size_t> blocks;  // tasks after it that need another set-up of its machine
};

class Network {
  public:
    // Nothing if the precedences go in a circle. With no more than `searched_tasks`, links that a longer way
    // round implies are left out, and those that machines imply come in: a set-up between two tasks that
    // follow each other.
    static std::optional<Network> make(const Problem& problem);

    const std::vector<Task>& tasks() const { return tasks_; }
    const Task& operator[](std::size_t task) const { return tasks_[task]; }
    std::size_t size() const { return tasks_.size(); }
    const Calendar& calendar() const { return calendar_; }
    std::size_t workers() const { return workers_; }
    std::size_t machines() const { return machines_; }
    std::size_t set_ups() const { return set_ups_.size(); }
    Seconds set_up_work(std::size_t set_up) const { return set_ups_[set_up].work; }
    std::size_t machine_of(std::size_t set_up) const { return set_ups_[set_up].machine; }

    // From a task's end to the end of all: the longest way of waits and work; with the nights in between once
    // a makespan to be reached is known (see latest_ends in chain.hpp).
    Seconds tail(std::size_t task) const { return tails_[task]; }
    void set_tails(std::vector<Seconds> tails) { tails_ = std::move(tails); }

    // Whether a task has to be done before another, by whatever way; known where tasks are searched at all.
    bool precedes(std::size_t before, std::size_t after) const { return precedes_[before * size() + after]; }

    // Parts of `next` that are in hand already after `last`; `last` may be none.
    std::size_t shared(std::size_t last, std::size_t next) const;
    std::size_t parts(std::size_t task) const { return parts_[task].size(); }

  private:
    Network(const Problem& problem, const std::vector<std::size_t>& order);
    void tidy_links();
    void tidy_links_of(std::size_t from, std::vector<Seconds>& lag);
    void find_tails();
    void count_shared_parts();

    std::vector<Task> tasks_;
    std::vector<std::vector<std::size_t>> parts_;
    std::vector<std::uint32_t> shared_;  // by last task and next, where tasks are not too many
    std::vector<Seconds> tails_;
    std::vector<bool> precedes_;  // by task before and task after
    Calendar calendar_;
    std::size_t workers_;
    std::size_t machines_ = 0;
    std::vector<SetUp> set_ups_;
};

std::vector<std::size_t> natural_order(const Network& network);

// More than these are done in natural order.
inline constexpr std::size_t searched_tasks = 1'000;

}  // namespace rodwright::schedule
