#include "compiler/stock/cutting/guillotine/trees.hpp"

#include <algorithm>
#include <utility>

namespace rodwright::cutting::guillotine {
namespace {

class Writer {
  public:
    Writer(const Kinds& kinds, const Layout& layout) : kinds_(kinds), nodes_(layout.nodes()) {
        tree_.stock = layout.stock();
        write(0, add(Size{}, nodes_[0].size));
    }

    CutTree tree() && { return std::move(tree_); }

  private:
    int add(Size corner, Size grown) {
        CutNode node;
        node.area = {corner,
                     {{grown.along[0] - kinds_.kerf.along[0], grown.along[1] - kinds_.kerf.along[1]}}};
        tree_.nodes.push_back(node);
        return static_cast<int>(tree_.nodes.size()) - 1;
    }

    // What is free comes last, so that it becomes dust where it is narrow.
    std::vector<int> ordered_children(int node) const {
        std::vector<int> children;
        for (int child = nodes_[at(node)].child; child != none; child = nodes_[at(child)].next) {
            children.push_back(child);
        }
        if (!nodes_[at(node)].frame) {
            std::stable_partition(children.begin(), children.end(),
                                  [&](int child) { return !nodes_[at(child)].is_free(); });
        }
        return children;
    }

    void write(int from, int to) {
        const Node& node = nodes_[at(from)];
        if (node.is_part()) {
            tree_.nodes[at(to)].kind = CutNode::Kind::part;
            tree_.nodes[at(to)].part = node.part;
            tree_.nodes[at(to)].turned = node.turned;
        }
        if (node.child != none) write_cuts(from, to);
    }

    // One cut behind each child but the last.
    void write_cuts(int from, int to) {
        const Axis axis = nodes_[at(from)].axis;
        const std::vector<int> children = ordered_children(from);
        int rest = to;
        Size left = nodes_[at(from)].size;
        for (std::size_t i = 0; i + 1 < children.size(); ++i) {
            const Size size = nodes_[at(children[i])].size;
            const Size corner = tree_.nodes[at(rest)].area.corner;
            const int first = add(corner, size);
            Size behind = corner;
            behind[axis] += size[axis];
            left[axis] -= size[axis];
            const bool dust = left[axis] <= kinds_.kerf[axis];
            const int second = dust ? none : add(behind, left);
            CutNode& cut = tree_.nodes[at(rest)];
            cut.kind = CutNode::Kind::cut;
            cut.axis = axis;
            cut.position = behind[axis] - kinds_.kerf[axis];
            cut.first = first;
            cut.second = second;
            write(children[i], first);
            rest = second;
        }
        if (rest != none) write(children.back(), rest);
    }

    const Kinds& kinds_;
    const std::vector<Node>& nodes_;
    CutTree tree_;
};

}  // namespace

CutTree cut_tree(const Kinds& kinds, const Layout& layout) {
    return Writer(kinds, layout).tree();
}

}  // namespace rodwright::cutting::guillotine
