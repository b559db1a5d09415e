#include "backends/packet/parts/feature_shape.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "backends/packet/context.hpp"
#include "backends/packet/parts/part_geometry.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

// A profile's corners by their distances along two directions of the drawing, from the low sides of the box
// around them.
struct Profile {
    std::array<Direction, 2> along;
    std::array<Rational, 2> size;
    std::vector<std::array<Rational, 2>> corners;

    bool at_low(std::size_t corner, std::size_t axis) const { return corners[corner][axis] == 0; }
    bool at_high(std::size_t corner, std::size_t axis) const { return corners[corner][axis] == size[axis]; }
    bool at_side(std::size_t corner, std::size_t axis) const {
        return at_low(corner, axis) || at_high(corner, axis);
    }
    Direction side(std::size_t axis, bool high) const { return high ? along[axis] : -along[axis]; }
};

Profile profile_of(const Kind& kind, const Feature& feature, const AxisView& view) {
    const std::vector<Vector> section = section_within(feature.body, overall_box(kind));
    Profile profile;
    std::size_t found = 0;
    for (const Direction along : {view.right, view.up, -view.towards}) {
        if (along.axis != feature.body.frame.w.axis) profile.along[found++] = along;
    }
    profile.corners.resize(section.size());
    for (std::size_t axis = 0; axis < 2; ++axis) {
        const Direction along = profile.along[axis];
        std::vector<Rational> places;
        for (const Vector& corner : section) {
            const Rational& at = corner[along.axis];
            places.push_back(along.positive ? at : Rational(-at));
        }
        if (places.empty()) continue;
        const auto [low, high] = std::minmax_element(places.begin(), places.end());
        const Rational least = *low;
        profile.size[axis] = *high - least;
        for (std::size_t i = 0; i < places.size(); ++i) profile.corners[i][axis] = places[i] - least;
    }
    return profile;
}

std::string degrees(double rise, double run) {
    const double angle = std::atan2(rise, run) * 180 / std::numbers::pi;
    const std::string text = fmt::format("{:.1f}", angle);
    return (text.ends_with(".0") ? text.substr(0, text.size() - 2) : text) + "\u00b0";
}

// Three corners, all of them corners of the box: the one between the two straight sides is where it is
// deepest.
std::string wedge_text(const Profile& profile, Direction open, const AxisView& view) {
    if (profile.corners.size() != 3) return "";
    for (std::size_t i = 0; i < 3; ++i) {
        if (!profile.at_side(i, 0) || !profile.at_side(i, 1)) return "";
    }
    for (std::size_t i = 0; i < 3; ++i) {
        const auto& corner = profile.corners[i];
        const auto& next = profile.corners[(i + 1) % 3];
        const auto& last = profile.corners[(i + 2) % 3];
        const bool square =
            (corner[0] == next[0] && corner[1] == last[1]) || (corner[1] == next[1] && corner[0] == last[0]);
        if (!square) continue;
        for (const std::size_t axis : {0U, 1U}) {
            if (profile.side(1 - axis, profile.at_high(i, 1 - axis)) != open) continue;
            const Direction deepest = profile.side(axis, profile.at_high(i, axis));
            return "wedge, deepest at the " + side_name(deepest, view) + ", " +
                   degrees(profile.size[1 - axis].get_d(), profile.size[axis].get_d());
        }
    }
    return "";
}

// Four corners, two of them the box's on one side, the other two as far from its corners on the other.
std::string dovetail_text(const Profile& profile, const AxisView& view, const FigureStyle& style) {
    if (profile.corners.size() != 4) return "";
    for (const std::size_t across : {0U, 1U}) {
        for (const bool high : {false, true}) {
            std::vector<Rational> wide;
            std::vector<Rational> narrow;
            for (const auto& corner : profile.corners) {
                const Rational& place = corner[1 - across];
                const bool at_narrow = place == (high ? profile.size[1 - across] : Rational(0));
                const bool at_wide = place == (high ? Rational(0) : profile.size[1 - across]);
                if (at_narrow) narrow.push_back(corner[across]);
                if (at_wide) wide.push_back(corner[across]);
            }
            if (wide.size() != 2 || narrow.size() != 2) continue;
            std::sort(wide.begin(), wide.end());
            std::sort(narrow.begin(), narrow.end());
            const Rational less = narrow[0] - wide[0];
            if (wide[0] != 0 || wide[1] != profile.size[across] || less <= 0 || wide[1] - narrow[1] != less)
                continue;
            return "dovetail, " + figure(Rational(narrow[1] - narrow[0]), style) + " at the " +
                   side_name(profile.side(1 - across, high), view) + ", " +
                   degrees(less.get_d(), profile.size[1 - across].get_d());
        }
    }
    return "";
}

bool is_box(const Profile& profile) {
    if (profile.corners.size() != 4) return false;
    for (std::size_t i = 0; i < 4; ++i) {
        if (!profile.at_side(i, 0) || !profile.at_side(i, 1)) return false;
    }
    return true;
}

std::string corners_text(const Profile& profile, const FigureStyle& style) {
    std::string text = "corners";
    for (const auto& corner : profile.corners) {
        text += (text == "corners" ? " " : "; ") + figure(corner[0], style) + ", " + figure(corner[1], style);
    }
    return text;
}

}  // namespace

std::string side_name(Direction direction, const AxisView& view) {
    if (direction == view.right) return "right end";
    if (direction == -view.right) return "left end";
    if (direction == view.up) return "upper edge";
    if (direction == -view.up) return "lower edge";
    return direction == view.towards ? "near face" : "far face";
}

std::string shape_text(const Kind& kind, const Feature& feature, const AxisView& view,
                       const FigureStyle& style) {
    if (hollow_of(feature.body, overall_box(kind))) return "arc";
    if (feature.body.form != BodyForm::prism) return "";
    const Profile profile = profile_of(kind, feature, view);
    if (is_box(profile)) return "";
    const std::string wedge = wedge_text(profile, open_side(kind, feature), view);
    if (!wedge.empty()) return wedge;
    const std::string dovetail = dovetail_text(profile, view, style);
    return dovetail.empty() ? corners_text(profile, style) : dovetail;
}

}  // namespace rodwright::packet
