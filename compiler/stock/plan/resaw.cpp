#include "compiler/stock/plan/resaw.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/stock/rough/flatten.hpp"

namespace rodwright {
namespace {

// One blank for the pieces from `first` on.
PlannedPiece bundle(const std::vector<PlannedPiece>& pieces, std::size_t first, std::size_t count,
                    const Vector& size) {
    PlannedPiece result = pieces[first];
    for (std::size_t i = first + 1; i < first + count; ++i) {
        const PlannedPiece& leaf = pieces[i];
        result.label += "+" + leaf.label;
        result.parts.insert(result.parts.end(), leaf.parts.begin(), leaf.parts.end());
    }
    result.leaves = static_cast<int>(count);
    result.size = size;
    return result;
}

DemandGroup emptied(DemandGroup group) {
    group.demands.clear();
    group.panels.clear();
    return group;
}

std::vector<Rational> thicknesses_at_hand(const DemandGroup& group, const Planning& planning) {
    std::vector<std::string> unsaid;
    std::vector<Rational> found;
    for (const Stock& stock : stock_at_hand(planning.rack, group.query(), planning.milling, unsaid))
        found.push_back(stock.board.thickness);
    std::ranges::sort(found);
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
}

}  // namespace

Rational thickness_for_leaves(int leaves, const Rational& finished, const MillingData& milling) {
    const Rational& kerf = milling.kerf(milling.saws.resaw);
    return leaves * (finished + 2 * milling.allowances.resawn_face + kerf) - kerf;
}

std::vector<Demand> as_leaves(std::vector<Demand> demands, const Rational& thickness,
                              const MillingData& milling) {
    std::vector<Demand> result;
    for (Demand& demand : demands) {
        const Rational finished = demand.size[Axis::tall] - milling.allowances.faces;
        const int leaves = resawn_leaves(thickness, finished, milling);
        if (leaves < 2 || demand.size[Axis::deep] > milling.saw_limits.tallest_resaw) {
            result.push_back(std::move(demand));
            continue;
        }
        Demand bundled = demand;
        bundled.pieces.clear();
        bundled.label += ", to be resawn";
        bundled.one_face = false;
        for (std::size_t i = 0; i < demand.pieces.size(); i += static_cast<std::size_t>(leaves)) {
            const std::size_t count = std::min(demand.pieces.size() - i, static_cast<std::size_t>(leaves));
            Vector size = demand.size;
            size[Axis::tall] = thickness_for_leaves(static_cast<int>(count), finished, milling);
            bundled.size[Axis::tall] = std::max(bundled.size[Axis::tall], size[Axis::tall]);
            bundled.pieces.push_back(bundle(demand.pieces, i, count, size));
        }
        result.push_back(std::move(bundled));
    }
    return result;
}

std::vector<ResawSplit> resaw_splits(const DemandGroup& group, const Planning& planning) {
    std::vector<ResawSplit> splits;
    if (group.sheet) return splits;
    for (const Rational& thickness : thicknesses_at_hand(group, planning)) {
        ResawSplit split{emptied(group), emptied(group)};
        split.leaves.resawn_from = thickness;
        split.leaves.least_thickness = thickness;
        const auto side = [&](const Rational& size, const Rational& width) -> DemandGroup& {
            const Rational finished = size - planning.milling.allowances.faces;
            const bool twice = resawn_leaves(thickness, finished, planning.milling) > 1 &&
                               width <= planning.milling.saw_limits.tallest_resaw;
            return twice ? split.leaves : *split.rest;
        };
        for (const Demand& demand : group.demands)
            side(demand.size[Axis::tall], demand.size[Axis::deep]).demands.push_back(demand);
        for (const PanelDemand& panel : group.panels)
            side(panel.need.size[Axis::tall], panel.need.narrowest).panels.push_back(panel);
        if (split.leaves.demands.empty() && split.leaves.panels.empty()) continue;
        if (split.rest->demands.empty() && split.rest->panels.empty()) split.rest.reset();
        splits.push_back(std::move(split));
    }
    return splits;
}

}  // namespace rodwright
