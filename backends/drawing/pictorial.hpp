// Solids in a pictorial view: faces in tones of their wood, grain, edges heavier where a part ends than where
// two of its faces meet. All of it in lines and filled shapes, so that it is sharp at any size, and clear in
// black and white.
#pragma once

#include "backends/drawing/projected.hpp"
#include "backends/drawing/shaded.hpp"

namespace rodwright::drawing {

// `view` are the lines of the same parts from the same side.
void draw_pictorial_view(Sheet& sheet, const Projected& view, const std::vector<ShadedPart>& parts,
                         const View& from, const ViewPlace& place, const PartLabel& label = {});

}  // namespace rodwright::drawing
