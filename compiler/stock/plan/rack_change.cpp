#include "compiler/stock/plan/rack_change.hpp"

#include <algorithm>

namespace rodwright {
namespace {

void add_used(const std::string& name, std::vector<RackChange::Used>& used) {
    const auto known = std::ranges::find(used, name, &RackChange::Used::name);
    if (known == used.end()) {
        used.push_back({name, 1});
    } else {
        ++known->count;
    }
}

// A plan's length runs along the grain, the rack's along the sheet.
RackChange::Left left_of(const PlannedBoard& board, const PlanArea& area) {
    if (board.grain_across) return {board.origin, area.from_edge, area.from_end, area.width, area.length};
    return {board.origin, area.from_end, area.from_edge, area.length, area.width};
}

}  // namespace

RackChange change_of(const WoodPlan& plan) {
    RackChange change;
    for (const PlannedBoard& board : plan.boards) {
        if (board.origin.empty()) continue;
        add_used(board.origin, change.used);
        for (const PlanRegion& region : board.regions) {
            if (region.kind == PlanRegion::Kind::offcut) change.left.push_back(left_of(board, region.area));
        }
    }
    return change;
}

}  // namespace rodwright
