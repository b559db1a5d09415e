#include "backends/drawing/regions.hpp"

#include <algorithm>

#include "backends/drawing/geos.hpp"

namespace rodwright::drawing {

std::vector<Region> regions_between(const std::vector<Polyline>& lines, double grid) {
    const Geos geos;
    const Geos::Shape all = geos.lines(lines);
    const Geos::Shape noded = geos.own(GEOSUnaryUnionPrec_r(geos.get(), all.get(), grid));
    if (!noded) return {};
    const GEOSGeometry* parts[] = {noded.get()};
    const Geos::Shape polygons = geos.own(GEOSPolygonize_r(geos.get(), parts, 1));
    std::vector<Region> regions;
    for (int i = 0; polygons && i < GEOSGetNumGeometries_r(geos.get(), polygons.get()); ++i)
        regions.push_back(geos.region_of(GEOSGetGeometryN_r(geos.get(), polygons.get(), i)));
    std::stable_sort(regions.begin(), regions.end(),
                     [](const Region& a, const Region& b) { return a.area > b.area; });
    return regions;
}

std::vector<Polyline> clipped(const std::vector<Polyline>& lines, const Region& region) {
    const Geos geos;
    const Geos::Shape all = geos.lines(lines);
    const Geos::Shape polygon = geos.polygon(region);
    const Geos::Shape within = geos.own(GEOSIntersection_r(geos.get(), all.get(), polygon.get()));
    std::vector<Polyline> found;
    for (int i = 0; within && i < GEOSGetNumGeometries_r(geos.get(), within.get()); ++i) {
        const GEOSGeometry* each = GEOSGetGeometryN_r(geos.get(), within.get(), i);
        if (GEOSGeomTypeId_r(geos.get(), each) == GEOS_LINESTRING) found.push_back(geos.points_of(each));
    }
    return found;
}

}  // namespace rodwright::drawing
