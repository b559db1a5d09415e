// One group of pieces planned after those before it.
#pragma once

#include <map>

#include "compiler/stock/plan/groups.hpp"
#include "compiler/stock/plan/level.hpp"

namespace rodwright {

// What all groups are planned from.
struct Planning {
    const Piece& piece;
    const Rack& rack;
    const MillingData& milling;
    Grid grid;
    cutting::Effort effort{};
};

// A group for which the wood is not enough.
struct Shortfall {
    DemandGroup group;
    Level level;               // with the staves that were chosen
    std::vector<int> missing;  // by demand of the level
};

// What one of WoodPlan::groups was planned for.
struct PlannedGroup {
    DemandGroup group;
    std::size_t index = 0;
    bool bought = false;  // what the dealer sells could be used
};

struct PlanState {
    WoodPlan plan;
    std::vector<PlannedGroup> groups;
    std::map<std::string, int> used;  // boards of the rack, by name
    std::vector<Shortfall> shortfalls;

    std::size_t missing() const;
};

// Names of the boards, at hand or for sale, that the group's pieces could come out of.
std::vector<std::string> candidates(const DemandGroup& group, const Planning& planning);

// Whether the dealer sells anything for it.
bool is_for_sale(const DemandGroup& group, const Planning& planning);

// The group out of the wood that is left at hand, and where `buy` and that is not enough, out of what the
// dealer sells too.
PlanState with_group(PlanState before, const DemandGroup& group, const Planning& planning, bool buy);

}  // namespace rodwright
