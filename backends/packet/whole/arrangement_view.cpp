#include "backends/packet/whole/arrangement_view.hpp"

#include <algorithm>
#include <cmath>

#include "backends/drawing/seen_at_all.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

std::vector<ShadedPart> all_parts(const Context& context) {
    std::vector<ShadedPart> parts;
    for (const PlacedSolid& placed : context.placed) {
        const auto kind = static_cast<std::size_t>(context.piece.parts[placed.tag].kind);
        parts.push_back({&context.triangles[kind], placed.pose, placed.tag, black});
    }
    return parts;
}

ArrangementView view_from(const Context& context, const AxisView& view,
                          const std::vector<ShadedPart>& parts) {
    ArrangementView shown;
    shown.view = view;
    shown.lines = project_visible(context.kernel, context.placed, parts, view.view());
    constexpr std::size_t pixels = 300;
    shown.grid = pixel_grid(shown.lines.bounds, pixels);
    shown.seen = parts_seen(parts, view.view(), shown.grid);
    return shown;
}

// The length of the straight lines that a view shows square to an axis at that coordinate of the piece, in
// parts of the view's extent that way; 0 in a view that looks along the axis.
double shown_at(const ArrangementView& view, Axis axis, double coordinate) {
    const bool across = view.view.right.axis == axis;
    const Direction direction = across ? view.view.right : view.view.up;
    if (direction.axis != axis) return 0;
    const std::size_t along = across ? 0 : 1;
    const double wanted = direction.positive ? coordinate : -coordinate;
    const auto there = [&](const PaperPoint& point) { return std::abs(point[along] - wanted) < 0.01; };
    double length = 0;
    for (const ViewLine& line : view.lines.lines) {
        if (!line.visible || line.line_class == LineClass::seam || line.shape != LineShape::line) continue;
        if (!there(line.points[0]) || !there(line.points[1])) continue;
        length += std::abs(line.points[1][1 - along] - line.points[0][1 - along]);
    }
    return length / std::max(across ? view.height() : view.width(), 1e-9);
}

}  // namespace

std::set<Rational> ends_of_parts(const Piece& piece, Axis axis) {
    std::set<Rational> ends;
    for (const Part& part : piece.parts) {
        ends.insert(part.body.low[axis]);
        ends.insert(part.body.high[axis]);
    }
    return ends;
}

ArrangementViews arrangement_views(const Context& context) {
    const AxisView front = axis_view({Axis::deep, false}, {Axis::tall, true});
    const bool third = context.projection == ProjectionMethod::third_angle;
    const std::vector<ShadedPart> parts = all_parts(context);
    return {view_from(context, front, parts), view_from(context, from_above(front), parts),
            view_from(context, from_side(front, third), parts)};
}

std::vector<Rational> principal_sizes(const Context& context, const ArrangementViews& views,
                                      Direction along) {
    constexpr double least_shown = 0.05;
    constexpr std::size_t most = 6;
    const Axis axis = along.axis;
    const Box& box = context.piece.box;
    std::vector<std::pair<double, Rational>> found;
    for (const Rational& end : ends_of_parts(context.piece, axis)) {
        double shown = 0;
        for (const ArrangementView& view : views) shown = std::max(shown, shown_at(view, axis, end.get_d()));
        const Rational size = along.positive ? Rational(end - box.low[axis]) : Rational(box.high[axis] - end);
        if (shown >= least_shown && size > 0 && size < box.size(axis)) found.emplace_back(shown, size);
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<Rational> sizes;
    for (std::size_t i = 0; i < std::min(most, found.size()); ++i) sizes.push_back(found[i].second);
    std::sort(sizes.begin(), sizes.end());
    return sizes;
}

}  // namespace rodwright::packet
