// Solids in a pictorial view: faces in tones of their wood, grain, edges heavier where a part ends than where
// two of its faces meet. All of it in lines and filled shapes, so that it is sharp at any size, and clear in
// black and white.
#pragma once

#include "backends/drawing/broken_edge.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/drawing/shaded.hpp"

namespace rodwright::drawing {

// The colour of a face of that wood, by its outward normal in the view (x right, y up, z to the viewer).
Colour shade(const Colour& wood, const Point3& normal);

// `view` are the lines of the same parts from the same side; those along `broken`, in the view's plane, are
// where the drawing ends and not the wood.
void draw_pictorial_view(Sheet& sheet, const Projected& view, const std::vector<ShadedPart>& parts,
                         const View& from, const ViewPlace& place, const PartLabel& label = {},
                         const std::vector<Segment>& broken = {});

}  // namespace rodwright::drawing
