// One stock piece while its layout is searched: a tree of guillotine cuts that parts are put into and taken
// out of.
//
// A node's children lie side by side along the node's axis and have its full size across it; their order is
// of no consequence, so all that is free among them is one child. A node without children is a part, free, or
// waste with a defect in it. Cuts round defects are frames: nodes with two children whose places count and
// that always stay.
#pragma once

#include <utility>
#include <vector>

#include "compiler/stock/cutting/guillotine/frames.hpp"

namespace rodwright::cutting::guillotine {

inline constexpr int none = -1;
inline constexpr int defect = -2;

struct Node {
    Size size;
    int parent = none;
    int child = none;  // the first of its children
    int next = none;   // the next of its siblings
    int part = none;   // index of a part kind; or `defect`
    int place = none;  // of a free node that can be used: its index in Layout::free
    int worth = 0;     // of a free node that counts
    Axis axis = Axis::length;
    bool turned = false;
    bool frame = false;
    bool one_face = false;  // of its area, one face only is without defects
    std::int8_t depth = 0;  // stages above it

    bool is_part() const { return part >= 0; }
    bool is_free() const { return part == none && child == none; }
};

// A free node that some part may fit into.
struct Free {
    Size size;
    int node = none;
    int worth = 0;  // the node's, as is:
    bool one_face = false;
};

// A way to put a part into a free node: the first cut divides `axis` (of no meaning if the part fills the
// node).
struct Placing {
    int node = none;
    Axis axis = Axis::length;
    bool turned = false;
    Amount loss = 0;  // of the free rectangles' worth
};

class Layout {
  public:
    explicit Layout(const Kinds& kinds) : kinds_(&kinds) {}

    // The same layout for another view of the same parts, in which its stock has that index.
    void bind(const Kinds& kinds, int stock);
    // An empty piece of that stock, cut round its defects in one of many ways.
    void open(int stock, Random& random);
    void close() { stock_ = none; }
    bool in_use() const { return stock_ != none; }
    bool empty() const { return parts_ == 0; }
    int stock() const { return stock_; }
    Amount worth() const { return worth_; }  // of all free nodes that count
    Amount filled() const { return filled_; }
    const std::vector<Node>& nodes() const { return nodes_; }
    const std::vector<Free>& free() const { return free_; }

    // Calls visit(const Placing&) for every way to put the part there.
    template <typename Visit>
    void for_each_placing(const Kind& kind, Visit&& visit) const;
    void put(int part, const Placing& placing);
    // Cuts a free node in two: one of that extent along the axis, and the rest.
    std::pair<int, int> cut(int node, Axis axis, int extent);
    // Takes out all parts at and below the node and appends their kinds.
    void take(int node, std::vector<int>& parts);

  private:
    template <typename Visit>
    void placings_in(const Free& free, const Kind& kind, bool turned, Visit&& visit) const;
    bool may_hold(const Kind& kind) const;
    bool may_cut(const Free& free, Size size, Axis axis) const {
        return kinds_->may_be_cut_anyhow() || rule_lets_cut(nodes_[at(free.node)], size, axis);
    }
    bool rule_lets_cut(const Node& node, Size size, Axis axis) const;
    int split(int node, Axis axis, int extent);
    int add_child(int parent, Size size);
    void set_free(int node);
    void set_used(int node);
    void drop(int node);
    void unlink(int node);
    void build(const std::vector<Region>& regions, int region, int node);
    bool in_frame(int node) const;
    void take_below(int node, std::vector<int>& parts);
    void merge_free(int node);

    const Kinds* kinds_;
    int stock_ = none;
    Amount worth_ = 0;
    Amount filled_ = 0;
    int parts_ = 0;
    std::vector<Node> nodes_;
    std::vector<int> spare_;  // unused entries of nodes_
    std::vector<Free> free_;
    mutable Size largest_;  // of all that is free, along each axis, worked out when asked for
    mutable bool largest_is_known_ = false;
};

inline bool Layout::may_hold(const Kind& kind) const {
    if (!largest_is_known_) {
        largest_ = {};
        for (const Free& free : free_) {
            for (std::size_t a = 0; a < 2; ++a)
                largest_.along[a] = std::max(largest_.along[a], free.size.along[a]);
        }
        largest_is_known_ = true;
    }
    return largest_.reaches(kind.upright) || (kind.may_turn && largest_.reaches(kind.turned));
}

template <typename Visit>
void Layout::for_each_placing(const Kind& kind, Visit&& visit) const {
    if (!may_hold(kind)) return;
    for (const Free& free : free_) {
        placings_in(free, kind, false, visit);
        if (kind.may_turn) placings_in(free, kind, true, visit);
    }
}

template <typename Visit>
void Layout::placings_in(const Free& free, const Kind& kind, bool turned, Visit&& visit) const {
    const Size size = kind.size(turned);
    const int rest_length = free.size.along[0] - size.along[0];
    const int rest_width = free.size.along[1] - size.along[1];
    if (rest_length < 0 || rest_width < 0 || (free.one_face && !kind.one_face)) return;
    if (rest_length == 0 && rest_width == 0) {
        visit(Placing{free.node, Axis::length, turned, free.worth});
        return;
    }
    if (rest_length > 0 && may_cut(free, size, Axis::length)) {
        const Amount after =
            kinds_->worth({{rest_length, free.size.along[1]}}) + kinds_->worth({{size.along[0], rest_width}});
        visit(Placing{free.node, Axis::length, turned, free.worth - after});
    }
    if (rest_width > 0 && may_cut(free, size, Axis::width)) {
        const Amount after =
            kinds_->worth({{free.size.along[0], rest_width}}) + kinds_->worth({{rest_length, size.along[1]}});
        visit(Placing{free.node, Axis::width, turned, free.worth - after});
    }
}

}  // namespace rodwright::cutting::guillotine
