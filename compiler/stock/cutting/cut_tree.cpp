#include "compiler/stock/cutting/cut_tree.hpp"

#include <algorithm>

namespace rodwright::cutting {

std::string_view bound_method_name(BoundMethod method) {
    switch (method) {
        case BoundMethod::area:
            return "area";
        case BoundMethod::stock_choice:
            return "lengths, widths and areas";
        case BoundMethod::dual_feasible:
            return "dual feasible functions";
        case BoundMethod::column_generation:
            return "column generation";
        case BoundMethod::joins:
            return "all ways to join the parts";
    }
    return {};
}

bool has_part(const CutTree& tree, int node) {
    if (node == CutNode::none) return false;
    const CutNode& each = tree.nodes[static_cast<std::size_t>(node)];
    if (each.kind != CutNode::Kind::cut) return each.kind == CutNode::Kind::part;
    return has_part(tree, each.first) || has_part(tree, each.second);
}

bool ends_with(const Rectangle& inner, const Rectangle& whole, Axis axis) {
    return inner.corner[axis] + inner.size[axis] == whole.corner[axis] + whole.size[axis];
}

bool CuttingPlan::complete() const {
    return std::all_of(missing.begin(), missing.end(), [](int count) { return count == 0; });
}

}  // namespace rodwright::cutting
