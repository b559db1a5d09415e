#include "compiler/workplan/schedule/task_sets.hpp"

#include <algorithm>

namespace rodwright::schedule {
namespace {

// Distinct heads, ascending; every so manieth if there are too many.
std::vector<Seconds> heads_to_try(const std::vector<Member>& members, std::size_t most) {
    std::vector<Seconds> all;
    for (const Member& member : members) all.push_back(member.head);
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    std::vector<Seconds> tried;
    for (std::size_t i = 0; i < all.size(); i += all.size() / most + 1) tried.push_back(all[i]);
    return tried;
}

}  // namespace

Fullest TaskSets::fullest(std::vector<Member>& members, const std::vector<Seconds>& set_up_heads, Clock clock,
                          std::size_t most_heads) {
    std::sort(members.begin(), members.end(), [](const Member& a, const Member& b) {
        return std::pair(-a.tail, a.task) < std::pair(-b.tail, b.task);
    });
    const Calendar& calendar = network_.calendar();
    const auto workers = static_cast<Seconds>(network_.workers());
    Fullest best;
    for (const Seconds head : heads_to_try(members, most_heads)) {
        ++heads_tried_;
        Seconds work = 0;
        std::size_t tasks = 0;
        for (const Member& member : members) {
            if (member.head < head) continue;
            const Task& task = network_[member.task];
            ++tasks;
            work += task.work;
            if (task.set_up != none && seen_[task.set_up] != heads_tried_ &&
                head <= set_up_heads[task.set_up]) {
                seen_[task.set_up] = heads_tried_;
                work += task.set_up_work;
            }
            const Seconds each = (work + workers - 1) / workers;
            const Seconds end =
                clock == Clock::of_day ? calendar.end(head, each) : head + calendar.end(0, each);
            const Seconds bound = end + member.tail;
            if (std::pair(bound, tasks) > std::pair(best.bound, best.tasks)) {
                best = {bound, tasks, head, member.tail};
            }
        }
    }
    return best;
}

}  // namespace rodwright::schedule
