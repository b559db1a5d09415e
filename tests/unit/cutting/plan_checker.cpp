#include "tests/unit/cutting/plan_checker.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright::cutting {
namespace {

struct Interval {
    long long from = 0;
    long long to = 0;
};

Interval extent(const Rectangle& area, int axis) {
    const auto a = static_cast<std::size_t>(axis);
    return {area.corner.along[a], static_cast<long long>(area.corner.along[a]) + area.size.along[a]};
}

bool same(Interval a, Interval b) {
    return a.from == b.from && a.to == b.to;
}

bool overlap(const Rectangle& a, const Rectangle& b) {
    for (int axis = 0; axis < 2; ++axis) {
        if (extent(a, axis).to <= extent(b, axis).from || extent(b, axis).to <= extent(a, axis).from)
            return false;
    }
    return true;
}

class Checker {
  public:
    Checker(const Problem& problem, const CuttingPlan& plan)
        : problem_(problem), plan_(plan), found_(problem.parts.size(), 0), used_(problem.stock.size(), 0) {}

    std::vector<std::string> run() {
        long long cost = 0;
        for (std::size_t i = 0; i < plan_.sheets.size(); ++i) {
            sheet_ = i;
            tree_ = &plan_.sheets[i];
            if (tree_->stock < 0 || static_cast<std::size_t>(tree_->stock) >= problem_.stock.size()) {
                fail("stock that there is not");
                continue;
            }
            stock_ = &problem_.stock[static_cast<std::size_t>(tree_->stock)];
            cost += stock_->cost;
            ++used_[static_cast<std::size_t>(tree_->stock)];
            check_sheet();
        }
        if (cost != plan_.cost) fail(fmt::format("costs {}, not {}", cost, plan_.cost));
        if (plan_.complete() && cost < plan_.bound.cost) fail("cheaper than its lower bound");
        check_counts();
        return std::move(faults_);
    }

  private:
    void fail(const std::string& what) { faults_.push_back(fmt::format("sheet {}: {}", sheet_, what)); }

    void check_counts() {
        for (std::size_t i = 0; i < used_.size(); ++i) {
            const auto limit = problem_.stock[i].available;
            if (limit && used_[i] > *limit)
                fail(fmt::format("{} of stock {}, only {} there", used_[i], i, *limit));
        }
        if (plan_.missing.size() != problem_.parts.size())
            return fail("missing has not an entry for each part");
        for (std::size_t i = 0; i < found_.size(); ++i) {
            if (plan_.missing[i] < 0) fail("less than none missing");
            if (found_[i] + plan_.missing[i] != problem_.parts[i].quantity) {
                fail(fmt::format("part {}: {} there, {} missing, {} asked for", i, found_[i],
                                 plan_.missing[i], problem_.parts[i].quantity));
            }
        }
    }

    void check_sheet() {
        visited_.assign(tree_->nodes.size(), 0);
        if (tree_->nodes.empty()) return fail("no nodes");
        if (tree_->nodes[0].area != Rectangle{{}, stock_->size}) fail("the root is not the stock piece");
        check_node(0, 0, -1);
        if (std::count(visited_.begin(), visited_.end(), 1) != static_cast<long>(visited_.size())) {
            fail("nodes that no cut makes");
        }
    }

    // `stages` have been begun above the node, the last of them dividing `axis`.
    void check_node(int index, int stages, int axis) {
        if (index < 0 || static_cast<std::size_t>(index) >= tree_->nodes.size())
            return fail("node out of range");
        if (visited_[static_cast<std::size_t>(index)]++ > 0) return fail("node with two parents");
        const CutNode& node = tree_->nodes[static_cast<std::size_t>(index)];
        if (node.area.size.along[0] <= 0 || node.area.size.along[1] <= 0) fail("node of no size");
        if (node.kind == CutNode::Kind::part) check_part(node);
        if (node.kind == CutNode::Kind::cut) check_cut(node, stages, axis);
    }

    void check_part(const CutNode& node) {
        if (node.part < 0 || static_cast<std::size_t>(node.part) >= problem_.parts.size())
            return fail("no such part");
        const PartKind& kind = problem_.parts[static_cast<std::size_t>(node.part)];
        ++found_[static_cast<std::size_t>(node.part)];
        if (node.turned && !kind.may_turn) fail(fmt::format("part {} turned", node.part));
        const int length = node.turned ? kind.size.along[1] : kind.size.along[0];
        const int width = node.turned ? kind.size.along[0] : kind.size.along[1];
        if (node.area.size.along[0] != length || node.area.size.along[1] != width) {
            fail(fmt::format("part {} has the wrong size", node.part));
        }
        check_faces(node, kind.one_face);
    }

    // Of a part that needs one face, either may be the one.
    void check_faces(const CutNode& node, bool one_face) {
        bool upper = true;
        bool lower = true;
        for (const Defect& defect : stock_->defects) {
            if (!overlap(node.area, defect.area)) continue;
            if (defect.faces != Faces::lower) upper = false;
            if (defect.faces != Faces::upper) lower = false;
        }
        const bool clear = one_face ? upper || lower : upper && lower;
        if (!clear) fail(fmt::format("part {} on a defect", node.part));
    }

    void check_cut(const CutNode& node, int stages, int axis) {
        const int divided = static_cast<int>(node.axis);
        if (stages == 0 && problem_.rule.first_axis && *problem_.rule.first_axis != node.axis) ++stages;
        if (divided != axis) ++stages;
        const int limit = problem_.rule.stages.value_or(1 << 20);
        if (stages > limit &&
            !(stages == limit + 1 && problem_.rule.trimming && divided != axis && trims(node))) {
            fail(fmt::format("{} stages", stages));
        }
        const Interval run = extent(node.area, 1 - divided);
        const Interval whole = extent(node.area, divided);
        const long long side =
            std::max(node.position - whole.from, whole.to - node.position - problem_.kerf[node.axis]);
        const int held = problem_.rule.least_held[node.axis];
        if (run.to - run.from < problem_.rule.shortest_cut[node.axis] && (held == 0 || side < held))
            fail("a cut that is too short");
        check_piece(node, node.first, node.position, true);
        if (node.second != CutNode::none) {
            check_piece(node, node.second, node.position + problem_.kerf[node.axis], false);
        } else if (extent(node.area, divided).to - node.position > problem_.kerf[node.axis]) {
            fail("the second piece is missing");
        }
        if (node.position <= extent(node.area, divided).from ||
            node.position >= extent(node.area, divided).to) {
            fail("a cut outside its node");
        }
        check_node(node.first, stages, divided);
        if (node.second != CutNode::none) check_node(node.second, stages, divided);
    }

    // A cut that separates one part from waste.
    bool trims(const CutNode& node) const {
        const auto is = [&](int child, CutNode::Kind kind) {
            return tree_->nodes[static_cast<std::size_t>(child)].kind == kind;
        };
        return is(node.first, CutNode::Kind::part) &&
               (node.second == CutNode::none || is(node.second, CutNode::Kind::waste));
    }

    // The piece reaches over its parent's whole extent across the cut, and up to the cut along it.
    void check_piece(const CutNode& parent, int child, long long edge, bool is_first) {
        if (child < 0 || static_cast<std::size_t>(child) >= tree_->nodes.size())
            return fail("piece out of range");
        const Rectangle& area = tree_->nodes[static_cast<std::size_t>(child)].area;
        const int divided = static_cast<int>(parent.axis);
        const Interval whole = extent(parent.area, divided);
        const Interval wanted = is_first ? Interval{whole.from, edge} : Interval{edge, whole.to};
        if (!same(extent(area, divided), wanted)) fail("a piece does not end at its cut");
        if (!same(extent(area, 1 - divided), extent(parent.area, 1 - divided)))
            fail("a cut not from edge to edge");
    }

    const Problem& problem_;
    const CuttingPlan& plan_;
    std::vector<int> found_;
    std::vector<int> used_;
    std::vector<int> visited_;
    std::vector<std::string> faults_;
    const CutTree* tree_ = nullptr;
    const StockPiece* stock_ = nullptr;
    std::size_t sheet_ = 0;
};

}  // namespace

std::vector<std::string> check_plan(const Problem& problem, const CuttingPlan& plan) {
    return Checker(problem, plan).run();
}

}  // namespace rodwright::cutting
