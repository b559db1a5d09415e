// The state of the shop after some tasks have been done in an order: the only place that knows when a task
// may begin. Tasks are appended, each as early as it can be after what its worker and its machine have done
// already; since a begin never gets later when anything before it gets earlier, some order gives a shortest
// timetable.
#pragma once

#include <array>
#include <tuple>

#include "compiler/workplan/schedule/network.hpp"

namespace rodwright::schedule {

// A task at the end of what is there already.
struct Placing {
    std::size_t task = none;
    std::size_t worker = 0;
    Seconds begin = 0;
    Seconds work_begins = 0;
    Seconds end = 0;
    bool sets_up = false;
    std::size_t shared = 0;  // parts that the worker has in hand already
};

// What timetables are compared by, most important first.
struct Figures {
    Seconds makespan = 0;  // with rests; `enough` if it is shorter
    std::size_t set_ups = 0;
    std::int64_t handling = 0;
    std::size_t displacement = 0;  // sum over tasks of |place - natural place|, Spearman's footrule

    friend auto operator<=>(const Figures&, const Figures&) = default;
};

class Progress {
  public:
    // Makespans up to `enough` are all the same.
    Progress(const Network& network, Seconds enough);

    // The task's predecessors must have been taken. Of two workers the one who can begin earlier; among
    // equals the one who has more of its parts in hand; then the one who would stand idle for less.
    Placing place(const Network& network, std::size_t task) const;
    void take(const Network& network, const Placing& placing);

    const Figures& figures() const { return figures_; }  // of what has been taken
    // The latest end of a task taken, with its tail: if it is more than `enough`, so will the makespan be.
    Seconds chain() const { return chain_; }
    // By how much tasks taken, with their tails, are over `enough`, all together.
    Seconds lateness() const { return lateness_; }
    std::size_t taken() const { return taken_; }
    std::size_t loaded(std::size_t machine) const { return machines_[machine].loaded; }
    std::size_t last_task(std::size_t worker) const { return workers_[worker].last; }
    Seconds free(std::size_t worker) const { return workers_[worker].free; }
    // When the work of a task may begin, as far as what it waits for has been taken.
    Seconds ready(std::size_t task) const { return ready_[task]; }

    // Whether everything can go on at least as early from here as from `other`, which has taken the same
    // tasks and, in the hands of either worker, the same ones last.
    bool as_early_as(const Progress& other) const;

  private:
    struct Worker {
        Seconds free = 0;
        std::size_t last = none;
    };
    struct Machine {
        Seconds free = 0;
        std::size_t loaded = none;
    };

    Placing place_with(const Network& network, std::size_t task, std::size_t worker) const;

    std::vector<Worker> workers_;
    std::vector<Machine> machines_;
    std::vector<Seconds> ready_;
    std::size_t taken_ = 0;
    Figures figures_;
    Seconds enough_;
    Seconds chain_ = 0;
    Seconds lateness_ = 0;
};

}  // namespace rodwright::schedule
