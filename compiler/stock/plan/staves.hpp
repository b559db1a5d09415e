// How many staves a panel is glued from, and how wide each is: chosen by trying what boards they then come
// out of.
#pragma once

#include "compiler/stock/plan/level.hpp"

namespace rodwright {

// The widths of one panel's staves in the glued-up panel; their sum is its width.
using StaveWidths = std::vector<Rational>;

// What is worth trying for a panel: equal staves in every count that its limits allow, and staves as wide as
// boards of the stock with the rest shared out equally. At least one; the fewest staves first.
std::vector<StaveWidths> stave_choices(const PanelDemand& panel, const std::vector<Stock>& stock,
                                       const MillingData& milling);

// The level's demands with the staves of all panels among them, so that quick plans miss fewest pieces and
// cost least; of equal ones the choice that comes first.
std::vector<Demand> with_staves(const Level& level, const std::vector<PanelDemand>& panels, const Grid& grid,
                                const MillingData& milling);

}  // namespace rodwright
