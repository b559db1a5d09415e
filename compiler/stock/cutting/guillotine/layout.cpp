#include "compiler/stock/cutting/guillotine/layout.hpp"

namespace rodwright::cutting::guillotine {
void Layout::open(int stock, Random& random) {
    stock_ = stock;
    worth_ = 0;
    filled_ = 0;
    parts_ = 0;
    nodes_.clear();
    spare_.clear();
    free_.clear();
    largest_is_known_ = false;
    Node root;
    root.size = kinds_->stock[at(stock)].size;
    nodes_.push_back(root);
    const Stock& piece = kinds_->stock[at(stock)];
    if (piece.defects.empty()) {
        set_free(0);
    } else {
        build(frame(*kinds_, piece, random), 0, 0);
    }
}

void Layout::build(const std::vector<Region>& regions, int region, int node) {
    const Region& from = regions[at(region)];
    nodes_[at(node)].depth = static_cast<std::int8_t>(from.stage);
    nodes_[at(node)].one_face = from.kind == Region::Kind::one_face;
    if (from.kind == Region::Kind::free || from.kind == Region::Kind::one_face) return set_free(node);
    if (from.kind == Region::Kind::waste) {
        nodes_[at(node)].part = defect;
        return;
    }
    nodes_[at(node)].frame = true;
    nodes_[at(node)].axis = from.axis;
    // The later child comes first in the list.
    const int second = add_child(node, regions[at(from.second)].area.size);
    const int first = add_child(node, regions[at(from.first)].area.size);
    build(regions, from.first, first);
    build(regions, from.second, second);
}

bool Layout::in_frame(int node) const {
    return nodes_[at(node)].parent != none && nodes_[at(nodes_[at(node)].parent)].frame;
}

void Layout::bind(const Kinds& kinds, int stock) {
    kinds_ = &kinds;
    stock_ = stock;
    filled_ = 0;
    worth_ = 0;
    free_.clear();
    largest_is_known_ = false;
    for (int i = 0; i < static_cast<int>(nodes_.size()); ++i) {
        const Node& node = nodes_[at(i)];
        if (node.is_part()) filled_ += kinds.parts[at(node.part)].weight;
        if (node.is_free()) set_free(i);
    }
}

// Whether the rule allows to cut the free node along `axis` for a part of that size: one cut, or a
// second across it, which may be the trimming one, because it leaves nothing but the part and waste.
bool Layout::rule_lets_cut(const Node& node, Size size, Axis axis) const {
    const Axis across = other(axis);
    const bool once = size[across] == node.size[across];
    if (!kinds_->may_be_cut(node.size, axis, size[axis])) return false;
    Size strip = node.size;
    strip[axis] = size[axis];
    if (!once && !kinds_->may_be_cut(strip, across, size[across])) return false;
    if (!kinds_->rule.stages) return true;
    int stage = node.depth;
    if (node.parent == none) {
        stage = kinds_->rule.first_axis && *kinds_->rule.first_axis != axis ? 1 : 0;
    } else if (nodes_[at(node.parent)].axis == axis) {
        --stage;
    }
    const int cuts = once ? 1 : 2;
    return stage + cuts <= *kinds_->rule.stages + (kinds_->rule.trimming ? 1 : 0);
}

void Layout::put(int part, const Placing& placing) {
    const Kind& kind = kinds_->parts[at(part)];
    const Size size = kind.size(placing.turned);
    int node = placing.node;
    set_used(node);
    if (nodes_[at(node)].size != size) {
        node = split(node, placing.axis, size[placing.axis]);
        const Axis across = other(placing.axis);
        if (nodes_[at(node)].size[across] != size[across]) node = split(node, across, size[across]);
    }
    nodes_[at(node)].part = part;
    nodes_[at(node)].turned = placing.turned;
    filled_ += kind.weight;
    ++parts_;
}

std::pair<int, int> Layout::cut(int node, Axis axis, int extent) {
    set_used(node);
    const int piece = split(node, axis, extent);
    const bool is_new = nodes_[at(piece)].parent == node;
    return {piece, is_new ? nodes_[at(piece)].next : node};
}

// Cuts a piece of that extent off a node that is not listed as free any more; the rest becomes free.
int Layout::split(int node, Axis axis, int extent) {
    const int parent = nodes_[at(node)].parent;
    Size piece = nodes_[at(node)].size;
    piece[axis] = extent;
    if (parent != none && !nodes_[at(parent)].frame && nodes_[at(parent)].axis == axis) {
        nodes_[at(node)].size[axis] -= extent;
        set_free(node);
        return add_child(parent, piece);
    }
    if (parent == none) {
        const bool skipped = kinds_->rule.first_axis && *kinds_->rule.first_axis != axis;
        nodes_[at(node)].depth = skipped ? 1 : 0;
    } else if (in_frame(node) && nodes_[at(parent)].axis == axis) {
        --nodes_[at(node)].depth;  // goes on with the frame's stage
    }
    Size rest = nodes_[at(node)].size;
    rest[axis] -= extent;
    nodes_[at(node)].axis = axis;
    set_free(add_child(node, rest));
    return add_child(node, piece);
}

int Layout::add_child(int parent, Size size) {
    Node node;
    node.size = size;
    node.parent = parent;
    node.next = nodes_[at(parent)].child;
    node.depth = static_cast<std::int8_t>(nodes_[at(parent)].depth + 1);
    node.one_face = nodes_[at(parent)].one_face;
    int index = 0;
    if (spare_.empty()) {
        index = static_cast<int>(nodes_.size());
        nodes_.push_back(node);
    } else {
        index = spare_.back();
        spare_.pop_back();
        nodes_[at(index)] = node;
    }
    nodes_[at(parent)].child = index;
    return index;
}

void Layout::set_free(int index) {
    Node& node = nodes_[at(index)];
    node.part = none;
    node.place = none;
    // What a trimming cut leaves is for no part.
    const bool usable =
        kinds_->may_hold_a_part(node.size) && !(kinds_->rule.stages && node.depth > *kinds_->rule.stages);
    node.worth = usable || kinds_->leftovers ? static_cast<int>(kinds_->worth(node.size)) : 0;
    worth_ += node.worth;
    if (!usable) return;
    node.place = static_cast<int>(free_.size());
    free_.push_back({node.size, index, node.worth, node.one_face});
    largest_is_known_ = false;
}

void Layout::set_used(int index) {
    Node& node = nodes_[at(index)];
    worth_ -= node.worth;
    node.worth = 0;
    if (node.place == none) return;
    free_[at(node.place)] = free_.back();
    nodes_[at(free_[at(node.place)].node)].place = node.place;
    free_.pop_back();
    largest_is_known_ = false;
    node.place = none;
}

void Layout::drop(int index) {
    set_used(index);
    unlink(index);
    nodes_[at(index)].part = defect;  // neither a part nor free
    spare_.push_back(index);
}

void Layout::unlink(int index) {
    int* link = &nodes_[at(nodes_[at(index)].parent)].child;
    while (*link != index) link = &nodes_[at(*link)].next;
    *link = nodes_[at(index)].next;
}

void Layout::take(int node, std::vector<int>& parts) {
    if (nodes_[at(node)].frame) {
        const int first = nodes_[at(node)].child;
        take(first, parts);
        take(nodes_[at(first)].next, parts);
    } else if (nodes_[at(node)].part != defect && !nodes_[at(node)].is_free()) {
        take_below(node, parts);
        merge_free(node);
    }
}

void Layout::take_below(int index, std::vector<int>& parts) {
    while (nodes_[at(index)].child != none) {
        const int child = nodes_[at(index)].child;
        take_below(child, parts);
        drop(child);
    }
    Node& node = nodes_[at(index)];
    if (!node.is_part()) return;
    parts.push_back(node.part);
    filled_ -= kinds_->parts[at(node.part)].weight;
    --parts_;
    node.part = none;
}

// Makes a childless node free, together with what is free beside it.
void Layout::merge_free(int index) {
    int node = index;
    for (int parent = nodes_[at(node)].parent; parent != none && !nodes_[at(parent)].frame;
         parent = nodes_[at(node)].parent) {
        const Axis axis = nodes_[at(parent)].axis;
        for (int sibling = nodes_[at(parent)].child; sibling != none;) {
            const Node& beside = nodes_[at(sibling)];
            const int next = beside.next;
            if (sibling != node && beside.is_free()) {
                nodes_[at(node)].size[axis] += beside.size[axis];
                drop(sibling);
            }
            sibling = next;
        }
        if (nodes_[at(parent)].child != node || nodes_[at(node)].next != none) break;
        drop(node);
        node = parent;
    }
    if (in_frame(node))
        nodes_[at(node)].depth = static_cast<std::int8_t>(nodes_[at(nodes_[at(node)].parent)].depth);
    set_free(node);
}

}  // namespace rodwright::cutting::guillotine
