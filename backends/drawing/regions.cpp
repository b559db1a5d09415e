#include "backends/drawing/regions.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "backends/drawing/geos.hpp"

namespace rodwright::drawing {

namespace {

using Knot = std::pair<long, long>;

Knot knot_of(Point point, double grid) {
    return {std::lround(point.x / grid), std::lround(point.y / grid)};
}

// Takes one of the lines that end there and is not used yet.
std::optional<std::size_t> take_unused(std::vector<std::size_t>& ending, std::vector<bool>& used) {
    while (!ending.empty()) {
        const std::size_t line = ending.back();
        ending.pop_back();
        if (used[line]) continue;
        used[line] = true;
        return line;
    }
    return std::nullopt;
}

// The same lines, those that end where another does joined to it: for each line that it cuts, GEOS seeds a
// generator of random numbers anew, which takes longer than the cutting.
std::vector<Polyline> chained(const std::vector<Polyline>& lines, double grid) {
    std::map<Knot, std::vector<std::size_t>> ending;
    std::vector<bool> used(lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        used[i] = lines[i].size() < 2;
        if (used[i]) continue;
        ending[knot_of(lines[i].front(), grid)].push_back(i);
        ending[knot_of(lines[i].back(), grid)].push_back(i);
    }
    std::vector<Polyline> chains;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (used[i]) continue;
        used[i] = true;
        Polyline chain = lines[i];
        for (Knot end = knot_of(chain.back(), grid);; end = knot_of(chain.back(), grid)) {
            const std::optional<std::size_t> next = take_unused(ending[end], used);
            if (!next) break;
            Polyline line = lines[*next];
            if (knot_of(line.front(), grid) != end) std::ranges::reverse(line);
            chain.insert(chain.end(), line.begin() + 1, line.end());
        }
        chains.push_back(std::move(chain));
    }
    return chains;
}

}  // namespace

std::vector<Region> regions_between(const std::vector<Polyline>& lines, double grid) {
    const Geos geos;
    const Geos::Shape all = geos.lines(chained(lines, grid));
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
