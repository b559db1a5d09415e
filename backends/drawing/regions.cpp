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

// Between two shares of the way from one point to another.
struct Interval {
    double low = 0;
    double high = 0;
};

double cross(Point a, Point b) {
    return a.x * b.y - a.y * b.x;
}

// Where the line through two points goes through the ring, as shares of the way from one to the other. An
// even number of them: a corner counts to the side of the line where it is not left of it.
void add_crossings(const Polyline& ring, Point from, Point way, std::vector<double>& crossings) {
    const double square = way.x * way.x + way.y * way.y;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i] - from;
        const Point b = ring[(i + 1) % ring.size()] - from;
        const double left_a = cross(way, a);
        const double left_b = cross(way, b);
        if ((left_a > 0) == (left_b > 0)) continue;
        const Point at = a + (b - a) * (left_a / (left_a - left_b));
        crossings.push_back((at.x * way.x + at.y * way.y) / square);
    }
}

// What of the way from one point to another lies in the region, in order.
std::vector<Interval> inside_of(const Region& region, Point from, Point to) {
    const Point way = to - from;
    std::vector<double> crossings;
    add_crossings(region.outline, from, way, crossings);
    for (const Polyline& hole : region.holes) add_crossings(hole, from, way, crossings);
    std::ranges::sort(crossings);
    std::vector<Interval> inside;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
        const Interval part{std::max(crossings[i], 0.0), std::min(crossings[i + 1], 1.0)};
        if (part.low < part.high) inside.push_back(part);
    }
    return inside;
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
    std::vector<Polyline> found;
    for (const Polyline& line : lines) {
        bool goes_on = false;  // from the segment before
        for (std::size_t i = 0; i + 1 < line.size(); ++i) {
            const Point way = line[i + 1] - line[i];
            bool to_end = false;
            for (const Interval& inside : inside_of(region, line[i], line[i + 1])) {
                if (!goes_on || inside.low > 0) found.push_back({line[i] + way * inside.low});
                found.back().push_back(line[i] + way * inside.high);
                to_end = inside.high == 1;
            }
            goes_on = to_end;
        }
    }
    return found;
}

}  // namespace rodwright::drawing
