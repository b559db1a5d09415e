// A timetable that is being made, with what is left to do: what the search keeps of each.
#pragma once

#include "compiler/workplan/schedule/progress.hpp"

namespace rodwright::schedule {

class Partial {
  public:
    Partial(const Network& network, Seconds enough);

    void take(const Network& network, const Placing& placing);

    const Progress& progress() const { return progress_; }
    bool taken(std::size_t task) const { return open_[task] == done; }
    // Tasks that may be taken, ascending.
    const std::vector<std::uint32_t>& available() const { return available_; }

    // Whether a set-up will surely be made once more: it is not on its machine and tasks with it are left, or
    // some of these come after tasks for which it has to leave its machine.
    bool to_make(const Network& network, std::size_t set_up) const;
    // That many there are.
    std::size_t sets_to_make() const { return to_make_; }
    // And after taking the placing.
    struct Change {
        std::size_t sets_to_make = 0;
        Seconds work = 0;  // of set-ups that are then to be made and were not before
    };
    Change change(const Network& network, const Placing& placing) const;

    // Parts of all tasks taken: handling, if no two tasks in a row shared any.
    std::int64_t parts() const { return parts_; }

    bool same_tasks(const Partial& other) const { return open_ == other.open_; }
    // Equal for those that differ at most in times and figures; `keys` has a random number for each task.
    std::uint64_t key(const Network& network, const std::vector<std::uint64_t>& keys) const;
    // No continuation of `other`, which has the same key and tasks, is better than the same one of this.
    bool as_good_as(const Partial& other) const;

  private:
    static constexpr std::uint32_t done = static_cast<std::uint32_t>(-1);

    Progress progress_;
    std::vector<std::uint32_t> open_;  // by task: predecessors not taken yet, or done
    std::vector<std::uint32_t> available_;
    std::vector<std::uint32_t> left_;  // by set-up: tasks not taken yet
    std::vector<std::uint32_t>
        blockers_;  // by task: tasks left that come before it and need another set-up of its machine
    std::vector<std::uint32_t> blocked_left_;  // by set-up: tasks with blockers
    std::size_t to_make_ = 0;
    std::int64_t parts_ = 0;
};

}  // namespace rodwright::schedule
