#include "compiler/stock/cutting/figures.hpp"

#include <set>
#include <utility>

namespace rodwright::cutting {

PlanFigures figures_of(const Problem& problem, const CuttingPlan& plan) {
    PlanFigures figures;
    const Size least = problem.least_useful;
    for (const CutTree& tree : plan.sheets) {
        std::set<std::pair<Axis, int>> settings;
        for (const CutNode& node : tree.nodes) {
            if (node.kind == CutNode::Kind::cut) {
                ++figures.cuts;
                settings.emplace(node.axis, node.position - node.area.corner[node.axis]);
            }
            const Size size = node.area.size;
            if (node.kind != CutNode::Kind::waste || !size.reaches(least) ||
                problem.stock[static_cast<std::size_t>(tree.stock)].has_defect_in(node.area)) {
                continue;
            }
            ++figures.useful_rectangles;
            figures.useful_area += size.area();
            figures.usefulness += static_cast<double>(size.area()) * static_cast<double>(size.area());
        }
        figures.settings += static_cast<int>(settings.size());
    }
    return figures;
}

}  // namespace rodwright::cutting
