#include "compiler/stock/plan/far_waste.hpp"

#include <algorithm>
#include <functional>

namespace rodwright {
namespace {

using cutting::CutNode;

// Whether all that ends where the stock piece does along the axis is waste: no part, and nothing that
// `is_kept` says of its size.
class FarSide {
  public:
    FarSide(const cutting::CutTree& tree, cutting::Axis axis,
            const std::function<bool(const cutting::Size&)>& is_kept)
        : tree_(tree), axis_(axis), is_kept_(is_kept) {}

    bool is_waste(int index) const {
        const CutNode& node = tree_.nodes[static_cast<std::size_t>(index)];
        if (!cutting::ends_with(node.area, tree_.nodes.front().area, axis_)) return true;
        if (!cutting::has_part(tree_, index)) return !is_kept_(node.area.size);
        if (node.kind == CutNode::Kind::part) return false;
        return is_waste(node.first) && (node.second == CutNode::none || is_waste(node.second));
    }

  private:
    const cutting::CutTree& tree_;
    cutting::Axis axis_;
    const std::function<bool(const cutting::Size&)>& is_kept_;
};

}  // namespace

Beyond spared_trim(const cutting::CutTree& tree, const Stock& stock, const Grid& grid,
                   const OffcutLimits& limits) {
    const PlannedBoard& board = stock.board;
    const PlanArea& usable = stock.usable;
    const Beyond beyond{board.length - usable.from_end - usable.length,
                        std::max(board.width, board.far_width) - usable.from_edge - usable.width};
    const auto is_kept = [&](const cutting::Size& size) {
        return limits.keeps(board.sheet, grid.length(size[cutting::Axis::length]) + beyond.length,
                            grid.length(size[cutting::Axis::width]) + beyond.width);
    };
    const auto spared = [&](cutting::Axis axis, const Rational& extent) {
        return FarSide(tree, axis, is_kept).is_waste(0) ? extent : Rational(0);
    };
    return {spared(cutting::Axis::length, beyond.length), spared(cutting::Axis::width, beyond.width)};
}

}  // namespace rodwright
