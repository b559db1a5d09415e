// How many staves a panel is glued from, and how wide each is: chosen by trying what boards they then come
// out of.
#pragma once

#include "compiler/stock/plan/groups.hpp"
#include "compiler/stock/plan/level.hpp"

namespace rodwright {

// The widths of one panel's staves in the glued-up panel; their sum is its width.
using StaveWidths = std::vector<Rational>;

// What is worth trying for a panel: equal staves in every count that its limits allow, and staves as wide as
// boards of the stock with the rest shared out equally. At least one; the fewest staves first.
std::vector<StaveWidths> stave_choices(const PanelDemand& panel, const std::vector<Stock>& stock,
                                       const MillingData& milling);

// The group's demands with the staves of all panels among them, and resawn where it says so, and a quick plan
// for them: so that it misses fewest pieces and costs least; of equal ones the choice that comes first.
struct StavedLevel {
    Level level;
    LevelPlan quick;
};
StavedLevel with_staves(const DemandGroup& group, std::vector<Stock> stock, const Grid& grid,
                        const MillingData& milling);

}  // namespace rodwright
