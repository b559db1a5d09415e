#include "compiler/assembly/take_apart.hpp"

#include <algorithm>
#include <optional>

namespace rodwright {

namespace {

// The smallest groups that can be drawn off one way: the strongly connected components of "meets" from which
// nothing leads out (Tarjan 1972).
class Groups {
  public:
    Groups(const Blocking& blocking, const PartNumbers& parts, Direction way)
        : blocking_(blocking), parts_(parts), way_(way), found_(parts.size()) {
        for (std::size_t i = 0; i < parts.size(); ++i) {
            if (found_[i].order == 0) search(i);
        }
    }
    const std::vector<PartNumbers>& that_can_go() const { return groups_; }

  private:
    struct Found {
        std::size_t order = 0;  // when it was come upon, from 1
        std::size_t low = 0;
        bool waits = false;      // on the stack
        bool leads_out = false;  // to a group that is complete
    };
    struct Visit {
        std::size_t part;
        std::size_t next;
    };

    const Blocking& blocking_;
    const PartNumbers& parts_;
    Direction way_;
    std::vector<Found> found_;
    std::vector<std::size_t> waiting_;
    std::size_t count_ = 0;
    std::vector<PartNumbers> groups_;

    void come_upon(std::size_t part, std::vector<Visit>& path) {
        found_[part] = {++count_, count_, true, false};
        waiting_.push_back(part);
        path.push_back({part, 0});
    }

    void search(std::size_t start) {
        std::vector<Visit> path;
        come_upon(start, path);
        while (!path.empty()) {
            const std::size_t part = path.back().part;
            if (path.back().next < parts_.size()) {
                look_at(part, path.back().next++, path);
                continue;
            }
            path.pop_back();
            const bool leads_out = found_[part].leads_out;
            const bool complete = found_[part].low == found_[part].order;
            if (complete) close_group(part);
            if (path.empty()) continue;
            Found& before = found_[path.back().part];
            if (complete) {
                before.leads_out = true;
            } else {
                before.low = std::min(before.low, found_[part].low);
                before.leads_out = before.leads_out || leads_out;
            }
        }
    }

    void look_at(std::size_t part, std::size_t other, std::vector<Visit>& path) {
        if (part == other || !blocking_.meets(parts_[part], parts_[other], way_)) return;
        if (found_[other].order == 0) {
            come_upon(other, path);
        } else if (found_[other].waits) {
            found_[part].low = std::min(found_[part].low, found_[other].order);
        } else {
            found_[part].leads_out = true;
        }
    }

    void close_group(std::size_t root) {
        PartNumbers group;
        bool leads_out = false;
        for (bool more = true; more;) {
            const std::size_t part = waiting_.back();
            waiting_.pop_back();
            found_[part].waits = false;
            leads_out = leads_out || found_[part].leads_out;
            group.push_back(parts_[part]);
            more = part != root;
        }
        if (leads_out) return;
        std::ranges::sort(group);
        groups_.push_back(std::move(group));
    }
};

PartNumbers without(const PartNumbers& parts, const PartNumbers& gone) {
    PartNumbers left;
    std::ranges::set_difference(parts, gone, std::back_inserter(left));
    return left;
}

struct Choice {
    Direction way;
    std::vector<PartNumbers> groups;  // all of one size; each can go whether or not the others have gone
};

std::size_t least_size(const std::vector<PartNumbers>& groups) {
    std::size_t least = groups.front().size();
    for (const PartNumbers& group : groups) least = std::min(least, group.size());
    return least;
}

// The smallest groups that can go; of several ways the one in which most of them can.
std::optional<Choice> next_choice(const Blocking& blocking, const PartNumbers& parts) {
    std::optional<Choice> best;
    for (const Direction way : all_ways) {
        const Groups groups(blocking, parts, way);
        const std::size_t least = least_size(groups.that_can_go());
        if (least == parts.size()) continue;
        Choice choice{way, {}};
        std::ranges::copy_if(groups.that_can_go(), std::back_inserter(choice.groups),
                             [&](const PartNumbers& group) { return group.size() == least; });
        const std::size_t best_size = best ? best->groups.front().size() : parts.size();
        if (least < best_size || (least == best_size && choice.groups.size() > best->groups.size()))
            best = std::move(choice);
    }
    if (best) std::ranges::sort(best->groups);
    return best;
}

}  // namespace

std::vector<PartNumbers> groups_that_can_go(const Blocking& blocking, const PartNumbers& parts,
                                            Direction way) {
    return Groups(blocking, parts, way).that_can_go();
}

TakenApart take_apart(const Blocking& blocking) {
    PartNumbers all;
    for (std::size_t i = 0; i < blocking.parts(); ++i) all.push_back(i);
    return take_apart(blocking, all);
}

TakenApart take_apart(const Blocking& blocking, const PartNumbers& some) {
    TakenApart apart;
    std::vector<PartNumbers> whole = {some};
    while (!whole.empty()) {
        const PartNumbers parts = std::move(whole.back());
        whole.pop_back();
        if (parts.size() < 2) continue;
        const std::optional<Choice> choice = next_choice(blocking, parts);
        if (!choice) {
            apart.locked.push_back(parts);
            continue;
        }
        PartNumbers stays = parts;
        for (const PartNumbers& goes : choice->groups) {
            if (goes.size() == stays.size()) break;
            stays = without(stays, goes);
            apart.partings.push_back({goes, stays, choice->way});
            whole.push_back(goes);
        }
        whole.push_back(std::move(stays));
    }
    return apart;
}

}  // namespace rodwright
