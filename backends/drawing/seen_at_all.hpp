// Solids of which a view shows nothing, found before its lines are hidden: that takes a time that grows with
// the square of what lies one behind another.
#pragma once

#include "backends/drawing/projected.hpp"
#include "backends/drawing/shaded.hpp"

namespace rodwright::drawing {

// The solids but for those that lie wholly behind faces of others. `parts[i]` is `solids[i]`. One that shows
// less than its mesh is exact to may be left out too.
std::vector<PlacedSolid> seen_at_all(const std::vector<PlacedSolid>& solids,
                                     const std::vector<ShadedPart>& parts, const View& from);

// The visible lines of the solids.
Projected project_visible(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids,
                          const std::vector<ShadedPart>& parts, const View& from);

}  // namespace rodwright::drawing
