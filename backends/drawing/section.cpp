#include "backends/drawing/section.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "backends/drawing/curve.hpp"
#include "backends/drawing/depth_buffer.hpp"
#include "backends/drawing/regions.hpp"
#include "backends/drawing/seen_at_all.hpp"

namespace rodwright::drawing {

namespace {

// A point of the axes that a solid is placed in, in the solid's own.
Point3 into(const Pose& pose, const Point3& point) {
    Point3 own{};
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t axis = 0; axis < 3; ++axis)
            own[i] += pose.columns[i][axis] * (point[axis] - pose.move[axis]);
    }
    return own;
}

Bounds into(const Pose& pose, const Bounds& box) {
    const Point3 a = into(pose, box.low);
    const Point3 b = into(pose, box.high);
    Bounds own;
    for (std::size_t i = 0; i < 3; ++i) std::tie(own.low[i], own.high[i]) = std::minmax(a[i], b[i]);
    return own;
}

// The box no farther out than a little beyond the solid, so that it tells where the solid is cut and no more.
Bounds clipped_to(Bounds box, const Bounds& solid) {
    constexpr double beyond = 1;  // mm
    for (std::size_t i = 0; i < 3; ++i) {
        box.low[i] = std::max(box.low[i], solid.low[i] - beyond);
        box.high[i] = std::min(box.high[i], solid.high[i] + beyond);
    }
    return box;
}

// Lines across the rectangle that slope up or down at 45 degrees. Anchored to the sheet's corner, so that
// what is cut apart and belongs together is hatched in line.
std::vector<Polyline> hatching(const Rect& over, double spacing, bool up) {
    const double slope = up ? 1 : -1;
    const double step = spacing * std::sqrt(2.0);
    // y = slope x + c
    const double low = up ? over.bottom - over.right : over.bottom + over.left;
    const double high = up ? over.top - over.left : over.top + over.right;
    std::vector<Polyline> lines;
    for (double c = std::ceil(low / step) * step; c <= high; c += step)
        lines.push_back({{over.left, slope * over.left + c}, {over.right, slope * over.right + c}});
    return lines;
}

bool along_side(const ViewLine& line, const Rect& box) {
    constexpr double slack = 1e-3;  // mm
    if (line.shape != LineShape::line) return false;
    const auto both_at = [&](std::size_t axis, double place) {
        return std::abs(line.points[0][axis] - place) < slack &&
               std::abs(line.points[1][axis] - place) < slack;
    };
    return both_at(0, box.left) || both_at(0, box.right) || both_at(1, box.bottom) || both_at(1, box.top);
}

std::vector<Polyline> hatching_of(std::size_t part, const Rect& over) {
    const double spacing = part % 4 < 2 ? 2.0 : 1.4;  // mm
    return hatching(over, spacing, part % 2 == 0);
}

}  // namespace

Cutting cut_to(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids, const Bounds& box) {
    using Cut = std::pair<SolidRef, std::vector<Triangle>>;
    std::map<std::tuple<const Solid*, Point3, Point3>, Cut> cuts;  // copies are often cut at the same place
    Cutting cutting;
    for (const PlacedSolid& each : solids) {
        const Bounds own = clipped_to(into(each.pose, box), each.solid->rough_bounds());
        const auto [at, is_new] = cuts.try_emplace({each.solid.get(), own.low, own.high});
        if (is_new) at->second.first = kernel.within(each.solid, own);
        const SolidRef left = at->second.first;
        if (!left) continue;
        if (is_new) at->second.second = kernel.triangles(*left, mesh_tolerance);
        cutting.solids.push_back({left, each.pose, each.tag});
        cutting.triangles.push_back(at->second.second);
    }
    return cutting;
}

Section section_through(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids,
                        const AxisView& from, const Point3& at, Bounds box) {
    const auto axis = static_cast<std::size_t>(from.towards.axis);
    (from.towards.positive ? box.high : box.low)[axis] = at[axis];
    Section section{cut_to(kernel, solids, box), from, from.towards.positive ? at[axis] : -at[axis], {}, {}};
    section.lines = project_visible(kernel, section.cutting.solids, section.parts(), from.view());
    const Point a = from.on_paper(box.low);
    const Point b = from.on_paper(box.high);
    section.window = {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
    return section;
}

std::vector<ShadedPart> Section::parts() const {
    std::vector<ShadedPart> parts;
    for (std::size_t i = 0; i < cutting.solids.size(); ++i) {
        const PlacedSolid& solid = cutting.solids[i];
        parts.push_back({&cutting.triangles[i], solid.pose, solid.tag, black});
    }
    return parts;
}

void draw_section(Sheet& sheet, const Section& section, const ViewPlace& place) {
    const std::vector<ShadedPart> parts = section.parts();
    const Scene scene(parts, section.from.view());
    std::vector<Polyline> borders;
    for (const ViewLine& line : section.lines.lines)
        borders.push_back(points_along(drawn_line(line, place, LineRole::visible)));
    for (const Region& region : regions_between(borders, 0.01)) {
        const Hit hit = scene.at(place.on_model(region.inside));
        if (hit.part == nullptr || std::abs(hit.depth - section.depth) > 0.01) continue;
        const Rect over = *extent_of(Fill{white, region.outline});
        for (Polyline& line :
             clipped(hatching_of(static_cast<std::size_t>(hit.part - parts.data()), over), region))
            sheet.polyline(LineRole::hatch, std::move(line));
    }
    Projected outlines = section.lines;
    const auto cut_off =
        std::stable_partition(outlines.lines.begin(), outlines.lines.end(),
                              [&](const ViewLine& line) { return !along_side(line, section.window); });
    for (auto line = cut_off; line != outlines.lines.end(); ++line)
        sheet.items.push_back(drawn_line(*line, place, LineRole::smooth));
    outlines.lines.erase(cut_off, outlines.lines.end());
    draw_view(sheet, outlines, place);
}

}  // namespace rodwright::drawing
