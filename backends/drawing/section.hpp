// Solids cut through and seen square to the cut, what is cut hatched (ISO 128-50: narrow lines at 45 degrees,
// parts that meet hatched different ways; at second hand).
#pragma once

#include <vector>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/drawing/shaded.hpp"

namespace rodwright::drawing {

// Solids cut off, or through, and drawn for themselves.
struct Cutting {
    std::vector<PlacedSolid> solids;               // what is left of each
    std::vector<std::vector<Triangle>> triangles;  // of each of them
};
// What of the solids lies within a box, in the axes that they are placed in. One of which nothing is left is
// left out.
Cutting cut_to(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids, const Bounds& box);

struct Section {
    Cutting cutting;
    AxisView from;
    double depth = 0;  // of the cut, along the view
    Projected lines;   // visible ones only
    Rect window;       // of the box: edges along its sides are where the drawing ends, not the wood

    // The cut solids to shade or to look up; they keep the tags of the solids.
    std::vector<ShadedPart> parts() const;
};

// What lies within the box and on the far side of the plane square to the view through `at`.
Section section_through(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids,
                        const AxisView& from, const Point3& at, Bounds box);

void draw_section(Sheet& sheet, const Section& section, const ViewPlace& place);

}  // namespace rodwright::drawing
