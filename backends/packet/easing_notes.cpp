#include "backends/packet/easing_notes.hpp"

#include <algorithm>
#include <cmath>

#include "backends/drawing/text_run.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double away = 9;  // mm: from the corner to the end of the leader, each way
constexpr double gap = 1;   // from there to the text

// A size of easing and the corners of the view that have it.
struct Easing {
    FeatureOp op{};
    Rational size;
    std::size_t corners = 0;
    bool upper_left = false;
    bool lower_left = false;
};

void add(std::vector<Easing>& found, const Feature& feature, const BoxEdge& edge, const AxisView& end) {
    const auto is = [&](Direction side) { return outward(edge.a) == side || outward(edge.b) == side; };
    const bool along_sight = axis_of(edge.a) != end.towards.axis && axis_of(edge.b) != end.towards.axis;
    if (!along_sight) return;
    const auto same = [&](const Easing& each) { return each.op == feature.op && each.size == feature.size; };
    auto at = std::find_if(found.begin(), found.end(), same);
    if (at == found.end()) at = found.insert(at, {feature.op, feature.size});
    ++at->corners;
    at->upper_left |= is(-end.right) && is(end.up);
    at->lower_left |= is(-end.right) && is(-end.up);
}

std::string text_of(const PartView& part, const Easing& easing) {
    const std::string size = figure(easing.size, {part.context.piece.style, std::nullopt});
    const std::string count = easing.corners > 1 ? std::to_string(easing.corners) + " × " : "";
    return count + (easing.op == FeatureOp::blend ? "R " + size : size + " × 45°");
}

}  // namespace

std::vector<EasingNote> easing_notes(const PartView& part, const AxisView& end) {
    std::vector<Easing> easings;
    for (const Feature& feature : part.kind.features) {
        if (feature.op != FeatureOp::blend && feature.op != FeatureOp::bevel) continue;
        for (const BoxEdge& edge : feature.edges) add(easings, feature, edge, end);
    }
    std::vector<EasingNote> notes;
    bool upper_taken = false;
    bool lower_taken = false;
    for (const Easing& easing : easings) {
        const bool upper = easing.upper_left && !upper_taken;
        if (!upper && (!easing.lower_left || lower_taken)) continue;
        (upper ? upper_taken : lower_taken) = true;
        notes.push_back({text_of(part, easing), easing.size, easing.op == FeatureOp::blend, upper});
    }
    return notes;
}

double easing_depth(const std::vector<EasingNote>& notes) {
    const bool lower =
        std::any_of(notes.begin(), notes.end(), [](const EasingNote& note) { return !note.upper; });
    return lower ? away + dimension_height + 1 : 0;
}

double easing_strip(const std::vector<EasingNote>& notes, const Fonts& fonts) {
    double widest = 0;
    for (const EasingNote& note : notes)
        widest = std::max(widest, text_width(note.text, FontFace::regular, dimension_height, fonts));
    return notes.empty() ? 0 : away + gap + widest + 1;
}

void draw_easing_notes(Sheet& sheet, const std::vector<EasingNote>& notes, const Rect& body, double factor) {
    for (const EasingNote& note : notes) {
        const double up = note.upper ? 1 : -1;
        const Point corner{body.left, note.upper ? body.top : body.bottom};
        // The middle of the arc, or of the chamfer.
        const double inward = note.size.get_d() * factor * (note.round ? 1 - std::sqrt(0.5) : 0.5);
        const Point tip = corner + Point{inward, -up * inward};
        const Point end = corner + Point{-away, up * away};
        sheet.line(LineRole::dimension, tip, end);
        draw_arrowhead(sheet, tip, Point{std::sqrt(0.5), -up * std::sqrt(0.5)});
        const Point baseline = end + Point{-gap, -dimension_height / 2};
        sheet.text({note.text, FontFace::regular, dimension_height, baseline, Align::right, false});
    }
}

}  // namespace rodwright::packet
