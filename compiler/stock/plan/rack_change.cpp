#include "compiler/stock/plan/rack_change.hpp"

#include <algorithm>

#include "compiler/stock/rack/offcut.hpp"

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

// What is bought has no faults that anybody knows of.
template <typename Entry>
Entry bought_entry(const PlannedBoard& board) {
    Entry entry;
    entry.species = board.species;
    entry.thickness = board.thickness;
    entry.length = board.grain_across ? board.width : board.length;
    entry.width = board.grain_across ? board.length : board.width;
    return entry;
}

void keep_of_bought(const PlannedBoard& board, const PlanArea& area, RackChange& change) {
    const RackChange::Left left = left_of(board, area);
    if (board.sheet) {
        auto whole = bought_entry<RackSheet>(board);
        if (board.grain_across) whole.grain = FaceGrain::along_width;
        if (board.no_grain) whole.grain = FaceGrain::none;
        change.left_of_bought_sheets.push_back(offcut_of(whole, left));
    } else {
        auto whole = bought_entry<RackBoard>(board);
        whole.cut = board.cut;
        whole.far_width = board.far_width;
        change.left_of_bought.push_back(offcut_of(whole, left, 1));
    }
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
