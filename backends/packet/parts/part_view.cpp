#include "backends/packet/parts/part_view.hpp"

#include <algorithm>

#include "backends/packet/parts/line_features.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

// A box's rectangle in a view's plane.
Rect outline_of(const Point3& low, const Point3& high, const AxisView& view) {
    const Point a = view.on_paper(low);
    const Point b = view.on_paper(high);
    return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

Rect outline_of(const Box& box, const AxisView& view) {
    return outline_of(point3_of(box.low), point3_of(box.high), view);
}

}  // namespace

Rect PartView::outline(const AxisView& view) const {
    return around(outline_of(overall_box(kind), view), outline_of(bounds.low, bounds.high, view));
}

Rect PartView::body(const AxisView& view) const {
    return outline_of(visible_box(kind), view);
}

Projected PartView::seen(const AxisView& view) const {
    Projected lines = project(context.kernel, {{solid, {}, 0}}, view.view(), true);
    const LineFeatures features(kind, view);
    for (ViewLine& line : lines.lines) {
        if (const auto feature = features.feature_of(line))
            line.tag = static_cast<std::uint32_t>(*feature + 1);
    }
    return lines;
}

PartLabel PartView::label() const {
    return [this](std::uint32_t tag) {
        if (tag == 0) return GroupStart();
        const Feature& feature = kind.features[tag - 1];
        return GroupStart{plain_words(feature.made_by), source_of(context, feature.where)};
    };
}

std::vector<Station> stations_on_sheet(const PartView& part, const std::vector<Rational>& distances,
                                       double datum, double factor) {
    std::vector<Station> found;
    for (const Rational& distance : distances)
        found.push_back({datum + distance.get_d() * factor, part.text(distance)});
    return found;
}

std::vector<Station> stations_on_sheet(const PartView& part, Direction along, double datum, double factor) {
    return stations_on_sheet(part, stations(part.kind, along), datum, factor);
}

bool is_plain(const Projected& view) {
    constexpr double on_edge = 1e-3;
    const Rect& b = view.bounds;
    const auto on_border = [&](const PaperPoint& p) {
        return std::min({p[0] - b.left, b.right - p[0], p[1] - b.bottom, b.top - p[1]}) < on_edge;
    };
    const auto inner = [&](const ViewLine& line) {
        if (line.line_class == LineClass::seam) return false;
        return line.shape != LineShape::line ||
               !std::all_of(line.points.begin(), line.points.end(), on_border);
    };
    return std::none_of(view.lines.begin(), view.lines.end(), inner);
}

Lengths lengths_of(const PartView& part, Direction along, double body_start, double factor) {
    const Extent& extend = part.extend(along);
    const Rational& before = along.positive ? extend.low : extend.high;
    Lengths lengths;
    lengths.start = body_start - before.get_d() * factor;
    lengths.body_start = body_start;
    lengths.body_end = body_start + part.kind.size[along.axis].get_d() * factor;
    lengths.end = lengths.start + part.kind.overall(along.axis).get_d() * factor;
    return lengths;
}

void draw_lengths(Sheet& sheet, const PartView& part, Run run, Direction along, const Lengths& at,
                  double outline, double first, double step) {
    const Extent& extend = part.extend(along);
    const Rational& before = along.positive ? extend.low : extend.high;
    const Rational& after = along.positive ? extend.high : extend.low;
    const auto point = [&](double place) {
        return run == Run::across ? Point{place, outline} : Point{outline, place};
    };
    const auto draw = [&](double from, double to, double line, const Rational& length, Overflow overflow) {
        draw_dimension(sheet, {run, point(from), point(to), line, part.text(length), overflow},
                       part.context.fonts);
    };
    const bool joined = part.joined(along);
    if (joined) {
        if (before != 0) draw(at.start, at.body_start, first, before, Overflow::beyond_low);
        draw(at.body_start, at.body_end, first, part.kind.size[along.axis], Overflow::outside);
        if (after != 0) draw(at.body_end, at.end, first, after, Overflow::beyond_high);
    }
    // Over a view and left of it figures stand outside their lines, and nothing else does.
    const bool figures_outside = (first > outline) == (run == Run::across);
    draw(at.start, at.end, joined ? first + step : first, part.kind.overall(along.axis),
         figures_outside ? Overflow::outside : Overflow::beyond_high);
}

}  // namespace rodwright::packet
