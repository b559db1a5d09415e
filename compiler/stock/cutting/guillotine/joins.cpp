#include "compiler/stock/cutting/guillotine/joins.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <map>
#include <queue>
#include <utility>

namespace rodwright::cutting::guillotine {
namespace {

constexpr Amount work_of_pair = 5;
constexpr Amount work_of_join = 100;
constexpr Amount work_of_rectangle = 1000;  // that is kept
constexpr std::array axes = {Axis::length, Axis::width};

// How many of each kind.
using Counts = std::vector<std::uint8_t>;

struct Rectangular {
    Size size;
    const Counts* counts = nullptr;
    Amount waste = 0;
    Axis axis = Axis::length;  // along which two are joined
    int first = none;          // they; or else it is a part:
    int second = none;
    int part = none;
    bool turned = false;
};

class Joins {
  public:
    Joins(const Kinds& kinds, int stock, Amount work)
        : kinds_(kinds), whole_(kinds.stock[at(stock)].size), spare_(whole_.area()), work_left_(work) {}

    Joined run() {
        Counts all;
        for (const Kind& kind : kinds_.parts) {
            if (kind.quantity > std::numeric_limits<std::uint8_t>::max()) return Joined::open;
            all.push_back(static_cast<std::uint8_t>(kind.quantity));
            spare_ -= kind.quantity * kind.least_area();
        }
        if (spare_ < 0) return Joined::impossible;
        add_parts();
        while (!waiting_.empty()) {
            const int next = -waiting_.top().second;
            waiting_.pop();
            if (*made_[at(next)].counts == all) {
                last_ = next;
                return Joined::made;
            }
            for (const Axis axis : axes)
                by_extent_[axis_index(axis)].emplace(made_[at(next)].size[axis], next);
            for (const Axis axis : axes) join(next, axis);
            if (work_left_ <= 0) return Joined::open;
        }
        return Joined::impossible;
    }

    // Cuts the free node the way that the rectangle which holds all was joined.
    void write(Layout& layout) const { write(last_, 0, layout); }

  private:
    void add_parts() {
        for (std::size_t i = 0; i < kinds_.parts.size(); ++i) {
            const Kind& kind = kinds_.parts[i];
            if (kind.quantity == 0) continue;
            Counts counts(kinds_.parts.size(), 0);
            counts[i] = 1;
            Rectangular made;
            made.part = static_cast<int>(i);
            for (const bool turned : {false, true}) {
                if (turned && !kind.may_turn) continue;
                made.size = kind.size(turned);
                made.waste = made.size.area() - kind.least_area();
                made.turned = turned;
                add(made, counts);
            }
        }
    }

    // Unless it is too large, or no better than what the same parts make already.
    void add(Rectangular made, const Counts& counts) {
        if (!whole_.reaches(made.size) || made.waste > spare_) return;
        work_left_ -= work_of_join;
        const auto place = of_parts_.try_emplace(counts).first;
        std::vector<int>& same = place->second;
        if (std::any_of(same.begin(), same.end(),
                        [&](int other) { return made.size.reaches(made_[at(other)].size); })) {
            return;
        }
        work_left_ -= work_of_rectangle;
        made.counts = &place->first;
        const int index = static_cast<int>(made_.size());
        same.push_back(index);
        waiting_.emplace(-made.size.area(), -index);
        made_.push_back(made);
    }

    // With itself and all before it whose extents across the axis are so alike that the waste is not too
    // great.
    void join(int index, Axis axis) {
        const Rectangular rectangle = made_[at(index)];
        const Axis across = other(axis);
        const Amount spare = spare_ - rectangle.waste;
        const Amount extent = rectangle.size[across];
        const auto& list = by_extent_[axis_index(across)];
        const Amount shorter = spare / kinds_.least_part()[axis];
        const Amount longer = spare / rectangle.size[axis];
        const auto end = list.upper_bound(extent + longer);
        for (auto beside = list.lower_bound(extent - shorter); beside != end; ++beside) {
            work_left_ -= work_of_pair;
            add_joined(rectangle, index, beside->second, axis);
        }
    }

    void add_joined(const Rectangular& rectangle, int index, int beside, Axis axis) {
        const Rectangular& second = made_[at(beside)];
        const Axis across = other(axis);
        Rectangular made;
        made.size[axis] = rectangle.size[axis] + second.size[axis];
        made.size[across] = std::max(rectangle.size[across], second.size[across]);
        if (made.size[axis] > whole_[axis]) return;
        made.waste =
            made.size.area() - rectangle.size.area() - second.size.area() + rectangle.waste + second.waste;
        if (made.waste > spare_ || !enough_for(*rectangle.counts, *second.counts)) return;
        Counts counts = *rectangle.counts;
        for (std::size_t i = 0; i < counts.size(); ++i) {
            counts[i] = static_cast<std::uint8_t>(counts[i] + (*second.counts)[i]);
        }
        made.axis = axis;
        made.first = index;
        made.second = beside;
        add(made, counts);
    }

    bool enough_for(const Counts& a, const Counts& b) const {
        for (std::size_t i = 0; i < a.size(); ++i) {
            if (a[i] + b[i] > kinds_.parts[i].quantity) return false;
        }
        return true;
    }

    void write(int index, int node, Layout& layout) const {
        const Rectangular& rectangle = made_[at(index)];
        if (rectangle.part != none) {
            layout.put(rectangle.part, {node, Axis::length, rectangle.turned, 0});
            return;
        }
        const int extent = made_[at(rectangle.first)].size[rectangle.axis];
        const std::pair<int, int> both = layout.cut(node, rectangle.axis, extent);
        write(rectangle.first, both.first, layout);
        write(rectangle.second, both.second, layout);
    }

    static std::size_t axis_index(Axis axis) { return axis == Axis::length ? 0 : 1; }

    const Kinds& kinds_;
    Size whole_;
    Amount spare_;  // waste that one piece leaves
    Amount work_left_;
    std::vector<Rectangular> made_;
    std::map<Counts, std::vector<int>> of_parts_;
    std::priority_queue<std::pair<Amount, int>> waiting_;  // the least area first, then the oldest
    std::array<std::multimap<Amount, int>, 2> by_extent_;  // by length and by width: what has been joined
    int last_ = none;
};

}  // namespace

Joined join_all(const Kinds& kinds, int stock, Amount work, Layout& layout) {
    Joins joins(kinds, stock, work);
    const Joined joined = joins.run();
    if (joined != Joined::made) return joined;
    if (kinds.rule.stages || !kinds.stock[at(stock)].defects.empty()) return Joined::open;
    Random random(1);
    layout.open(stock, random);
    joins.write(layout);
    return joined;
}

}  // namespace rodwright::cutting::guillotine
