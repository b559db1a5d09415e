// The regions into which lines divide the paper (GEOS: noding and polygons).
#pragma once

#include <vector>

#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

using Polyline = std::vector<Point>;

struct Region {
    Polyline outline;             // the first point is not repeated
    std::vector<Polyline> holes;  // what lies in them is no part of the region
    Point inside;                 // a point well within it
    double area = 0;
};

// Every bounded region, the largest first. Lines need not end in one another: they are cut where they cross,
// and ends nearer to a line than `grid` meet it. What ends in nothing bounds nothing.
std::vector<Region> regions_between(const std::vector<Polyline>& lines, double grid);

// What of the lines lies in the region.
std::vector<Polyline> clipped(const std::vector<Polyline>& lines, const Region& region);

}  // namespace rodwright::drawing
