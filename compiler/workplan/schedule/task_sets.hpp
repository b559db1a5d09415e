// Sets of tasks that fill the workers' time between a head and a tail (see bound.hpp).
#pragma once

#include "compiler/workplan/schedule/network.hpp"

namespace rodwright::schedule {

// A task, as a set sees it.
struct Member {
    std::size_t task = none;
    Seconds head = 0;  // of its set-up, if it makes one
    Seconds tail = 0;
};

// All members with at least this head and this tail.
struct Fullest {
    Seconds bound = 0;
    std::size_t tasks = 0;
    Seconds head = 0;
    Seconds tail = 0;
};

class TaskSets {
  public:
    enum class Clock : std::uint8_t {
        of_day,        // heads are times of the timetable, work stands still at night
        from_any_time  // heads count from an unknown time: as many nights as there must be
    };

    explicit TaskSets(const Network& network) : network_(network), seen_(network.set_ups(), 0) {}

    // The set with the largest bound, 0 if none has a positive one; of several the one with most tasks, as it
    // explains the bound best. At most `most_heads` heads are tried. A set-up counts in sets whose head is
    // not after its own, by set-up in `set_up_heads`: then it is surely not made before. Sorts the members by
    // tail.
    Fullest fullest(std::vector<Member>& members, const std::vector<Seconds>& set_up_heads, Clock clock,
                    std::size_t most_heads);

  private:
    const Network& network_;
    std::vector<std::size_t> seen_;  // by set-up: the last head with which it was counted
    std::size_t heads_tried_ = 0;
};

}  // namespace rodwright::schedule
