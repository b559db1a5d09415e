#include "compiler/stock/plan/fewer_cuts.hpp"

#include <algorithm>
#include <optional>

#include "compiler/stock/cutting/figures.hpp"

namespace rodwright {
namespace {

using cutting::CutNode;
using cutting::CutTree;
using cutting::Rectangle;

// Trees are written anew from the extents of what parallel cuts make of a rectangle (cells); where these lie
// follows.
class Trees {
  public:
    Trees(const CutTree& tree, const cutting::StockPiece& stock, cutting::Size kerf, bool trim_at_once)
        : tree_(tree), stock_(stock), kerf_(kerf), trim_at_once_(trim_at_once) {
        out_.stock = tree.stock;
    }

    CutTree run() && {
        const Rectangle& whole = at(0).area;
        const bool stays = !trim_at_once_ || stock_.has_defect_in(whole);
        for (const cutting::Axis axis : {cutting::Axis::length, cutting::Axis::width}) {
            const std::optional<int> extent = stays ? std::nullopt : common_trim(0, axis);
            if (extent) write_cells({{0, *extent, true}}, 0, axis, whole);
        }
        if (out_.nodes.empty()) write(0, whole);
        return std::move(out_);
    }

  private:
    struct Cell {
        int node = CutNode::none;  // none: waste
        int extent = 0;
        bool trimmed = false;  // all pieces of the node were trimmed to the extent
    };

    const CutTree& tree_;
    const cutting::StockPiece& stock_;
    cutting::Size kerf_;
    bool trim_at_once_;
    CutTree out_;

    const CutNode& at(int node) const { return tree_.nodes[static_cast<std::size_t>(node)]; }
    bool is_cut(int node, cutting::Axis axis) const {
        return node != CutNode::none && at(node).kind == CutNode::Kind::cut && at(node).axis == axis;
    }
    bool has_part(int node) const { return cutting::has_part(tree_, node); }

    bool ends_in_dust(int node, cutting::Axis axis) const {
        while (is_cut(node, axis)) node = at(node).second;
        return node == CutNode::none;
    }

    std::vector<Cell> cells_of(int node, cutting::Axis axis) const {
        std::vector<Cell> cells;
        add_cells(node, axis, cells);
        return cells;
    }

    // Waste beside waste is one cell.
    void add_cells(int node, cutting::Axis axis, std::vector<Cell>& cells) const {
        for (; is_cut(node, axis); node = at(node).second) {
            const int first = at(node).first;
            if (is_cut(first, axis) && !ends_in_dust(first, axis)) {
                add_cells(first, axis, cells);
            } else {
                add_cell(first, axis, cells);
            }
        }
        if (node != CutNode::none) add_cell(node, axis, cells);
    }

    void add_cell(int node, cutting::Axis axis, std::vector<Cell>& cells) const {
        const int extent = at(node).area.size[axis];
        if (!cells.empty() && !has_part(node) && !has_part(cells.back().node)) {
            cells.back() = {CutNode::none, cells.back().extent + kerf_[axis] + extent, false};
        } else {
            cells.push_back({node, extent, false});
        }
    }

    // The extent that all pieces of a strip are trimmed to along the axis, where there are several.
    std::optional<int> common_trim(int strip, cutting::Axis axis) const {
        if (!is_cut(strip, other(axis))) return std::nullopt;
        std::optional<int> extent;
        int pieces = 0;
        for (const Cell& cell : cells_of(strip, other(axis))) {
            if (!has_part(cell.node)) continue;
            const bool is_trimmed = is_cut(cell.node, axis) && !has_part(at(cell.node).second);
            if (!is_trimmed) return std::nullopt;
            const int own = at(at(cell.node).first).area.size[axis];
            if (extent && *extent != own) return std::nullopt;
            extent = own;
            ++pieces;
        }
        return pieces > 1 ? extent : std::nullopt;
    }

    // Empty where nothing is to be trimmed at once: then the cells stay as they are.
    std::vector<Cell> trimmed_cells(const std::vector<Cell>& cells, cutting::Axis axis) const {
        std::vector<Cell> kept;
        std::vector<Cell> trimmed;
        for (const Cell& cell : cells) {
            if (const std::optional<int> extent = common_trim(cell.node, axis)) {
                trimmed.push_back({cell.node, *extent, true});
            } else if (has_part(cell.node)) {
                kept.push_back(cell);
            }
        }
        if (trimmed.empty()) return {};
        kept.insert(kept.end(), trimmed.begin(), trimmed.end());
        return kept;
    }

    int add(const Rectangle& area) {
        CutNode node;
        node.area = area;
        out_.nodes.push_back(node);
        return static_cast<int>(out_.nodes.size()) - 1;
    }

    int write(int node, const Rectangle& area) {
        if (at(node).kind != CutNode::Kind::cut) {
            const int index = add(area);
            CutNode copy = at(node);
            copy.area = area;
            out_.nodes[static_cast<std::size_t>(index)] = copy;
            return index;
        }
        const cutting::Axis axis = at(node).axis;
        const std::vector<Cell> cells = cells_of(node, axis);
        const bool stays = !trim_at_once_ || stock_.has_defect_in(at(node).area);
        const std::vector<Cell> better = stays ? std::vector<Cell>{} : trimmed_cells(cells, axis);
        return write_cells(better.empty() ? cells : better, 0, axis, area);
    }

    // What the cells leave of the area is waste.
    int write_cells(const std::vector<Cell>& cells, std::size_t from, cutting::Axis axis,
                    const Rectangle& area) {
        if (from == cells.size()) return add(area);
        const Cell& cell = cells[from];
        if (cell.extent == area.size[axis]) return write_cell(cell, axis, area);
        const int index = add(area);
        Rectangle first = area;
        first.size[axis] = cell.extent;
        Rectangle rest = area;
        rest.corner[axis] += cell.extent + kerf_[axis];
        rest.size[axis] -= cell.extent + kerf_[axis];
        const int first_index = write_cell(cell, axis, first);
        const int rest_index = rest.size[axis] > 0 ? write_cells(cells, from + 1, axis, rest) : CutNode::none;
        CutNode& cut = out_.nodes[static_cast<std::size_t>(index)];
        cut.kind = CutNode::Kind::cut;
        cut.axis = axis;
        cut.position = first.corner[axis] + first.size[axis];
        cut.first = first_index;
        cut.second = rest_index;
        return index;
    }

    int write_cell(const Cell& cell, cutting::Axis axis, const Rectangle& area) {
        if (cell.node == CutNode::none) return add(area);
        if (!cell.trimmed) return write(cell.node, area);
        std::vector<Cell> pieces;
        for (const Cell& piece : cells_of(cell.node, other(axis))) {
            const bool kept = has_part(piece.node);
            if (kept) pieces.push_back({at(piece.node).first, piece.extent, false});
        }
        return write_cells(pieces, 0, other(axis), area);
    }
};

int cuts_of_what_cannot_be_held(const cutting::Problem& problem, const CutTree& tree) {
    return static_cast<int>(std::ranges::count_if(tree.nodes, [&](const CutNode& node) {
        if (node.kind != CutNode::Kind::cut) return false;
        const int first = node.position - node.area.corner[node.axis];
        const int rest = node.area.size[node.axis] - first - problem.kerf[node.axis];
        return !problem.rule.lets_hold(node.axis, node.area.size[other(node.axis)], std::max(first, rest));
    }));
}

}  // namespace

CutTree with_fewer_cuts(const cutting::Problem& problem, const CutTree& tree) {
    const cutting::StockPiece& stock = problem.stock[static_cast<std::size_t>(tree.stock)];
    const auto figures = [&](const CutTree& one) {
        cutting::CuttingPlan plan;
        plan.sheets = {one};
        return cutting::figures_of(problem, plan);
    };
    CutTree best = tree;
    for (const bool trim_at_once : {false, true}) {
        CutTree other = Trees(best, stock, problem.kerf, trim_at_once).run();
        const cutting::PlanFigures before = figures(best);
        const cutting::PlanFigures after = figures(other);
        const bool as_good =
            after.usefulness >= before.usefulness &&
            cuts_of_what_cannot_be_held(problem, other) <= cuts_of_what_cannot_be_held(problem, best);
        if (after.cuts < before.cuts && as_good) best = std::move(other);
    }
    return best;
}

}  // namespace rodwright
