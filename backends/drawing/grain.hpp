// Wood as pen strokes: along the fibres on faces that show them, growth rings on end grain.
#pragma once

#include "backends/drawing/depth_buffer.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/drawing/regions.hpp"

namespace rodwright::drawing {

// The strokes over a rectangle of the sheet for a face seen there, `hit` one point of it. The same part has
// the same strokes wherever it stands; nothing is drawn on what has no fibres (sheet goods look as their
// faces do).
std::vector<Polyline> grain_strokes(const Hit& hit, const ViewAxes& axes, const ViewPlace& place,
                                    const Rect& over);

}  // namespace rodwright::drawing
