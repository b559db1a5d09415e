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

template <typename Offcut>
Offcut offcut_of(const PlannedBoard& board, const RackChange::Left& left) {
    Offcut offcut;
    offcut.species = board.species;
    offcut.thickness = board.thickness;
    offcut.length = left.length;
    offcut.width = left.width;
    offcut.offcut = true;
    return offcut;
}

void keep_of_bought(const PlannedBoard& board, const PlanArea& area, RackChange& change) {
    const RackChange::Left left = left_of(board, area);
    if (!board.sheet) {
        RackBoard offcut = offcut_of<RackBoard>(board, left);
        offcut.cut = board.cut;
        offcut.far_width = left.width;
        return change.left_of_bought.push_back(std::move(offcut));
    }
    RackSheet offcut = offcut_of<RackSheet>(board, left);
    if (board.grain_across) offcut.grain = FaceGrain::along_width;
    if (board.no_grain) offcut.grain = FaceGrain::none;
    change.left_of_bought_sheets.push_back(std::move(offcut));
}

}  // namespace

RackChange change_of(const WoodPlan& plan) {
    RackChange change;
    for (const PlannedBoard& board : plan.boards) {
        const bool bought = board.origin.empty();
        if (!bought) add_used(board.origin, change.used);
        for (const PlanRegion& region : board.regions) {
            if (region.kind != PlanRegion::Kind::offcut) continue;
            if (bought) {
                keep_of_bought(board, region.area, change);
            } else {
                change.left.push_back(left_of(board, region.area));
            }
        }
    }
    return change;
}

}  // namespace rodwright
