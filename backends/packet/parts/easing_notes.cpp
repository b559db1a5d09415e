#include "backends/packet/parts/easing_notes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "backends/drawing/leader.hpp"
#include "backends/drawing/text_run.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double away = 9;      // mm: from the corner to the end of the leader, each way
constexpr double text_gap = 1;  // from there to the text

// Upper left, lower left, upper right, lower right.
constexpr std::size_t corners = 4;
constexpr bool is_right(std::size_t corner) {
    return corner >= 2;
}
constexpr bool is_upper(std::size_t corner) {
    return corner % 2 == 0;
}

// A size of easing and the corners of the view that have it.
struct Easing {
    FeatureOp op{};
    Rational size;
    std::array<bool, corners> at{};
};

void add(std::vector<Easing>& found, const Feature& feature, const BoxEdge& edge, const AxisView& end) {
    const auto is = [&](Direction side) { return outward(edge.a) == side || outward(edge.b) == side; };
    const auto same = [&](const Easing& each) { return each.op == feature.op && each.size == feature.size; };
    for (std::size_t corner = 0; corner < corners; ++corner) {
        if (!is(is_right(corner) ? end.right : -end.right) || !is(is_upper(corner) ? end.up : -end.up))
            continue;
        auto easing = std::find_if(found.begin(), found.end(), same);
        if (easing == found.end()) easing = found.insert(easing, {feature.op, feature.size});
        easing->at[corner] = true;
    }
}

std::string text_of(const PartView& part, const Easing& easing) {
    const std::string size = figure(easing.size, {part.context.piece.style, std::nullopt});
    const auto count = std::count(easing.at.begin(), easing.at.end(), true);
    const std::string times = count > 1 ? std::to_string(count) + " × " : "";
    return times + (easing.op == FeatureOp::blend ? "R " + size : size + " × 45°");
}

}  // namespace

std::vector<EasingNote> easing_notes(const PartView& part, const AxisView& end) {
    std::vector<Easing> easings;
    for (const Feature& feature : part.kind.features) {
        if (feature.op != FeatureOp::blend && feature.op != FeatureOp::bevel) continue;
        for (const BoxEdge& edge : feature.edges) add(easings, feature, edge, end);
    }
    // Those that have few corners to choose from choose first.
    std::stable_sort(easings.begin(), easings.end(), [](const Easing& a, const Easing& b) {
        return std::count(a.at.begin(), a.at.end(), true) < std::count(b.at.begin(), b.at.end(), true);
    });
    std::vector<EasingNote> notes;
    std::array<bool, corners> taken{};
    for (const Easing& easing : easings) {
        std::size_t corner = 0;
        while (corner < corners && (!easing.at[corner] || taken[corner])) ++corner;
        if (corner == corners) continue;
        taken[corner] = true;
        notes.push_back({text_of(part, easing), easing.size, easing.op == FeatureOp::blend, is_right(corner),
                         is_upper(corner)});
    }
    return notes;
}

double easing_depth(const std::vector<EasingNote>& notes) {
    const bool lower =
        std::any_of(notes.begin(), notes.end(), [](const EasingNote& note) { return !note.upper; });
    return lower ? away + dimension_height + 1 : 0;
}

double easing_strip(const std::vector<EasingNote>& notes, bool right, const Fonts& fonts) {
    double strip = 0;
    for (const EasingNote& note : notes) {
        const double width = text_width(note.text, FontFace::regular, dimension_height, fonts);
        if (note.right == right) strip = std::max(strip, away + text_gap + width + 1);
    }
    return strip;
}

void draw_easing_notes(Sheet& sheet, const std::vector<EasingNote>& notes, const Rect& body, double factor,
                       const Rect& room, const Fonts& fonts) {
    for (const EasingNote& note : notes) {
        const Point corner{note.right ? body.right : body.left, note.upper ? body.top : body.bottom};
        // The middle of the arc, or of the chamfer.
        const double inward = note.size.get_d() * factor * (note.round ? 1 - std::sqrt(0.5) : 0.5);
        const Point tip = corner + Point{note.right ? -inward : inward, note.upper ? -inward : inward};
        draw_leader(sheet, {note.text, {{tip, leader_ways(note.right, note.upper)}}}, room, fonts);
    }
}

}  // namespace rodwright::packet
