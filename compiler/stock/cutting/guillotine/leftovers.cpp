#include "compiler/stock/cutting/guillotine/leftovers.hpp"

#include <algorithm>

#include "compiler/stock/cutting/guillotine/search.hpp"
#include "compiler/stock/cutting/guillotine/trees.hpp"

namespace rodwright::cutting::guillotine {
namespace {

// A share of what the cost may take, and no more than so much for each part.
constexpr Amount work_for_a_part = 20'000;

Amount tidying_limit(Effort effort) {
    switch (effort) {
        case Effort::quick:
            return 1'000'000;
        case Effort::normal:
            return 12'000'000;
        case Effort::deep:
            return 120'000'000;
    }
    return 0;
}

Amount number_of_parts(const std::vector<Layout>& layouts) {
    Amount count = 0;
    for (const Layout& layout : layouts) {
        count += std::count_if(layout.nodes().begin(), layout.nodes().end(),
                               [](const Node& node) { return node.is_part(); });
    }
    return count;
}

// In one dimension a part has only one way to go on a stock piece with others.
Layout row(const Kinds& kinds, const CutTree& tree, Random& random) {
    Layout layout(kinds);
    layout.open(tree.stock, random);
    for (const CutNode& node : tree.nodes) {
        if (node.kind != CutNode::Kind::part) continue;
        Placing only;
        layout.for_each_placing(kinds.parts[static_cast<std::size_t>(node.part)],
                                [&](const Placing& placing) { only = placing; });
        layout.put(node.part, only);
    }
    return layout;
}

}  // namespace

std::vector<Layout> with_large_leftovers(const Kinds& kinds, const std::vector<Layout>& layouts,
                                         Effort effort) {
    const Amount limit = std::min(tidying_limit(effort), work_for_a_part * number_of_parts(layouts));
    const Kinds same = kinds.for_leftovers();
    Search search(same, 1);
    for (Layout layout : layouts) {
        layout.bind(same, layout.stock());
        search.adopt(layout);
    }
    return search.leave_large(limit);
}

void leave_large_rests(const Problem& problem, CuttingPlan& plan, Effort effort) {
    const Kinds kinds(problem);
    Random random(1);
    std::vector<Layout> layouts;
    for (const CutTree& tree : plan.sheets) layouts.push_back(row(kinds, tree, random));
    write_sheets(kinds, with_large_leftovers(kinds, layouts, effort), plan);
}

void write_sheets(const Kinds& kinds, const std::vector<Layout>& layouts, CuttingPlan& plan) {
    plan.sheets.clear();
    plan.cost = 0;
    for (const Layout& layout : layouts) {
        if (!layout.in_use()) continue;
        plan.sheets.push_back(cut_tree(kinds, layout));
        plan.cost += kinds.stock[static_cast<std::size_t>(layout.stock())].cost;
    }
}

}  // namespace rodwright::cutting::guillotine
