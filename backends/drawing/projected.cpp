#include "backends/drawing/projected.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace rodwright::drawing {

namespace {

Point point_of(const PaperPoint& point) {
    return {point[0], point[1]};
}

double angle_of(Point from, Point to) {
    return std::atan2(to.y - from.y, to.x - from.x);
}

double positive_turn(double angle) {
    return angle < 0 ? angle + 2 * std::numbers::pi : angle;
}

Arc arc_of(const ViewLine& line, LineRole role) {
    const Point centre = point_of(line.centre);
    if (line.closed) return {role, centre, line.radius, 0, 2 * std::numbers::pi};
    const double from = angle_of(centre, point_of(line.points[0]));
    const double to_middle = positive_turn(angle_of(centre, point_of(line.points[1])) - from);
    const double to_end = positive_turn(angle_of(centre, point_of(line.points[2])) - from);
    // Counter-clockwise if the middle comes before the end that way round.
    const double sweep = to_middle <= to_end ? to_end : to_end - 2 * std::numbers::pi;
    return {role, centre, line.radius, from, sweep};
}

Item in_model(const ViewLine& line, LineRole role) {
    if (line.shape == LineShape::arc) return arc_of(line, role);
    Stroke stroke{role, {}, false, line.shape == LineShape::curve};
    for (const PaperPoint& point : line.points) stroke.points.push_back(point_of(point));
    return stroke;
}

std::optional<LineRole> role_of(const ViewLine& line) {
    if (line.line_class == LineClass::seam) return std::nullopt;
    if (line.line_class == LineClass::smooth) {
        return line.visible ? std::optional(LineRole::smooth) : std::nullopt;
    }
    return line.visible ? LineRole::visible : LineRole::hidden;
}

}  // namespace

namespace {

// Points of a curve nearer to each other on the paper than any eye or tool parts them are left out.
void thin_out(std::vector<Point>& points) {
    constexpr double spacing = 0.3;  // mm
    std::vector<Point> kept = {points.front()};
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        const Point way = points[i] - kept.back();
        if (std::hypot(way.x, way.y) >= spacing) kept.push_back(points[i]);
    }
    if (points.size() > 1) kept.push_back(points.back());
    points = std::move(kept);
}

}  // namespace

Item drawn_line(const ViewLine& line, const ViewPlace& place, LineRole role) {
    Item item = in_model(line, role);
    if (auto* arc = std::get_if<Arc>(&item)) {
        arc->centre = place.on_sheet(arc->centre);
        arc->radius *= place.factor;
    } else {
        Stroke& stroke = std::get<Stroke>(item);
        for (Point& point : stroke.points) point = place.on_sheet(point);
        if (stroke.smooth) thin_out(stroke.points);
    }
    return item;
}

Projected projected(std::vector<ViewLine> lines) {
    Projected view;
    bool first = true;
    for (const ViewLine& line : lines) {
        const std::optional<Rect> here = extent_of(in_model(line, LineRole::visible));
        if (!here) continue;
        view.bounds = first ? *here : around(view.bounds, *here);
        first = false;
    }
    view.lines = std::move(lines);
    return view;
}

Projected project(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids, const View& from,
                  bool with_hidden) {
    return projected(kernel.view(solids, from, with_hidden));
}

Rect ViewPlace::on_sheet(const Rect& model) const {
    const Point low = on_sheet(Point{model.left, model.bottom});
    const Point high = on_sheet(Point{model.right, model.top});
    return {low.x, low.y, high.x, high.y};
}

void add_by_part(Sheet& sheet, std::vector<TaggedItem> items, const PartLabel& label) {
    if (!label) {
        for (TaggedItem& each : items) sheet.items.push_back(std::move(each.item));
        return;
    }
    const auto by_tag = [](const TaggedItem& a, const TaggedItem& b) { return a.tag < b.tag; };
    std::stable_sort(items.begin(), items.end(), by_tag);
    for (std::size_t i = 0; i < items.size(); ++i) {
        const bool first = i == 0 || items[i - 1].tag != items[i].tag;
        const bool last = i + 1 == items.size() || items[i + 1].tag != items[i].tag;
        GroupStart group = label(items[i].tag);
        const bool named = !group.name.empty();
        if (first && named) sheet.items.emplace_back(std::move(group));
        sheet.items.push_back(std::move(items[i].item));
        if (last && named) sheet.items.emplace_back(GroupEnd{});
    }
}

void draw_view(Sheet& sheet, const Projected& view, const ViewPlace& place, const PartLabel& label) {
    std::vector<TaggedItem> items;
    for (const LineRole role : {LineRole::hidden, LineRole::smooth, LineRole::visible}) {
        for (const ViewLine& line : view.lines) {
            if (role_of(line) == role) items.push_back({line.tag, drawn_line(line, place, role)});
        }
    }
    add_by_part(sheet, std::move(items), label);
}

}  // namespace rodwright::drawing
