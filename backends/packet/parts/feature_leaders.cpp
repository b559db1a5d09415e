#include "backends/packet/parts/feature_leaders.hpp"

#include <algorithm>
#include <optional>

#include "backends/packet/parts/feature_shape.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

struct Hole {
    Rational diameter;
    std::string depth;            // " through", ", 3/4\" deep"
    std::string from;             // where it is not open to the viewer, or not only: ", from the left end"
    std::vector<Vector> centres;  // 0 along the view
};

bool spans(const Box& extent, const Box& stock, Axis axis) {
    return extent.low[axis] <= stock.low[axis] && extent.high[axis] >= stock.high[axis];
}

std::string depth_text(const PartView& part, const Box& extent, Axis axis) {
    if (spans(extent, visible_box(part.kind), axis)) return " through";
    return ", " + part.text(extent.size(axis)) + " deep";
}

std::string from_text(const PartView& part, const Feature& feature, const std::string& depth,
                      const AxisView& view) {
    const Direction open = open_side(part.kind, feature);
    if (open == view.towards || depth == " through") return "";
    return ", from the " + side_name(open, lying(part.kind));
}

Hole& hole_like(std::vector<Hole>& holes, const Hole& wanted) {
    const auto same = [&](const Hole& each) {
        return each.diameter == wanted.diameter && each.depth == wanted.depth && each.from == wanted.from;
    };
    const auto found = std::find_if(holes.begin(), holes.end(), same);
    return found == holes.end() ? holes.emplace_back(wanted) : *found;
}

// Holes that come from the far side at the places of those from the near side are told with them.
void join_from_both_sides(std::vector<Hole>& holes) {
    for (Hole& near : holes) {
        if (!near.from.empty()) continue;
        const auto opposite = [&](const Hole& far) {
            return !far.from.empty() && far.diameter == near.diameter && far.depth == near.depth &&
                   std::is_permutation(far.centres.begin(), far.centres.end(), near.centres.begin(),
                                       near.centres.end());
        };
        const auto far = std::find_if(holes.begin(), holes.end(), opposite);
        if (far == holes.end()) continue;
        near.from = ", from both sides";
        holes.erase(far);
        join_from_both_sides(holes);
        return;
    }
}

// The two ends of a wedge's slope along the part, the first where nothing is cut away yet. Empty for any
// other shape.
std::optional<std::array<Vector, 2>> slope_of(const Kind& kind, const Feature& feature) {
    if (feature.op != FeatureOp::trim || feature.body.form != BodyForm::prism) return std::nullopt;
    const std::vector<Vector> corners = section_within(feature.body, overall_box(kind));
    if (corners.size() != 3) return std::nullopt;
    const Direction open = open_side(kind, feature);
    const Rational surface = open.positive ? kind.size[open.axis] : Rational(0);
    for (std::size_t i = 0; i < 3; ++i) {
        const Vector& a = corners[i];
        const Vector& b = corners[(i + 1) % 3];
        if (a[Axis::wide] == b[Axis::wide] || a[open.axis] == b[open.axis]) continue;
        return a[open.axis] == surface ? std::array{a, b} : std::array{b, a};
    }
    return std::nullopt;
}

}  // namespace

std::vector<Leader> hole_leaders(const PartView& part, const DrawnView& drawn) {
    std::vector<Hole> holes;
    const Box stock = overall_box(part.kind);
    const Axis axis = drawn.view.towards.axis;
    for (const Feature& feature : part.kind.features) {
        const Body& body = feature.body;
        const bool round = feature.op == FeatureOp::remove && body.form == BodyForm::cylinder;
        if (!round || body.frame.w.axis != axis || hollow_of(body, stock)) continue;
        const std::optional<Box> extent = extent_within(body, stock);
        if (!extent) continue;
        const std::string depth = depth_text(part, *extent, axis);
        Hole& hole = hole_like(holes, {body.size_u, depth, from_text(part, feature, depth, drawn.view), {}});
        Vector centre = body.frame.origin;
        centre[axis] = 0;
        if (std::find(hole.centres.begin(), hole.centres.end(), centre) == hole.centres.end())
            hole.centres.push_back(std::move(centre));
    }
    join_from_both_sides(holes);
    std::vector<Leader> leaders;
    for (const Hole& hole : holes) {
        const std::size_t count = hole.centres.size();
        Leader leader{(count > 1 ? std::to_string(count) + " \u00d7 " : "") + "\u2300 " +
                          part.text(hole.diameter) + hole.depth + hole.from,
                      {}};
        for (const Vector& centre : hole.centres) {
            const Point at = drawn.on_sheet(drawn.view.on_paper(point3_of(centre)));
            for (LeaderTip& tip : tips_on_circle(at, hole.diameter.get_d() / 2 * drawn.factor))
                leader.tips.push_back(std::move(tip));
        }
        leaders.push_back(std::move(leader));
    }
    return leaders;
}

std::vector<Leader> taper_leaders(const PartView& part, const DrawnView& drawn,
                                  const DimensionedAxes& dimensioned) {
    const Axis across = drawn.view.up.axis;
    const bool says_start = !dimensioned.contains(Axis::wide);
    const bool says_end = !dimensioned.contains(across);
    std::vector<Leader> leaders;
    const bool seen_from_end =
        drawn.view.towards.axis == Axis::wide;  // where a slope along the part is no line
    if (seen_from_end || (!says_start && !says_end)) return leaders;
    for (const Feature& feature : part.kind.features) {
        const auto slope = slope_of(part.kind, feature);
        const Direction open = open_side(part.kind, feature);
        if (!slope || open.axis != across) continue;
        const auto& [begins, ends] = *slope;
        const Rational left = open.positive ? ends[across] : Rational(part.kind.size[across] - ends[across]);
        const Rational start = distance_along(part.kind, drawn.view.right, begins[Axis::wide]);
        const std::string text = plain_words(feature.made_by) +
                                 (says_start ? " from " + part.text(start) : "") +
                                 (says_end ? " to " + part.text(left) : "");
        const Point a = drawn.on_sheet(drawn.view.on_paper(point3_of(begins)));
        const Point b = drawn.on_sheet(drawn.view.on_paper(point3_of(ends)));
        leaders.push_back({text, {{(a + b) * 0.5, leader_ways()}}});
    }
    return leaders;
}

void draw_feature_leaders(Sheet& sheet, const PartView& part, const DrawnView& drawn,
                          const DimensionedAxes& dimensioned, const Rect& room) {
    for (const Leader& leader : hole_leaders(part, drawn))
        draw_leader(sheet, leader, room, part.context.fonts);
    for (const Leader& leader : taper_leaders(part, drawn, dimensioned))
        draw_leader(sheet, leader, room, part.context.fonts);
}

}  // namespace rodwright::packet
