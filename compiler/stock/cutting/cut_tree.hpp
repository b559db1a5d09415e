// What a cutting plan is: for every stock piece used, a tree of guillotine cuts.
#pragma once

#include <string_view>
#include <vector>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

// A rectangle on the stock piece and what becomes of it. One with a cut falls apart into `first`, which ends
// at `position` (in the coordinates of the stock piece), and `second`, which begins behind it by the kerf of
// the divided axis; `second` is missing where the rest is no wider than that and so becomes dust.
struct CutNode {
    enum class Kind : std::uint8_t { cut, part, waste };
    static constexpr int none = -1;

    Kind kind = Kind::waste;
    Rectangle area;
    Axis axis = Axis::length;  // of a cut: the axis it divides
    int position = 0;          // of a cut
    int first = none;          // of a cut: indices into CutTree::nodes
    int second = none;
    int part = none;      // of a part: index into Problem::parts
    bool turned = false;  // of a part
};

struct CutTree {
    int stock = 0;               // index into Problem::stock
    std::vector<CutNode> nodes;  // nodes[0] is the whole stock piece; children come after their parents
};

// At or below a node (or `none`).
bool has_part(const CutTree& tree, int node);

// Whether a rectangle within another reaches its far side along the axis.
bool ends_with(const Rectangle& inner, const Rectangle& whole, Axis axis);

// Which argument gave the lower bound.
enum class BoundMethod : std::uint8_t { area, stock_choice, dual_feasible, column_generation, joins };
std::string_view bound_method_name(BoundMethod method);

struct LowerBound {
    Amount cost = 0;  // no plan costs less
    BoundMethod method = BoundMethod::area;
};

struct CuttingPlan {
    std::vector<CutTree> sheets;
    std::vector<int>
        missing;  // by part kind: how many found no place (all stock limited, or a part too large)
    Amount cost = 0;
    LowerBound bound;

    bool complete() const;
    bool optimal() const { return complete() && cost == bound.cost; }
};

}  // namespace rodwright::cutting
