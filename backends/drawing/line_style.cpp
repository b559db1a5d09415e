#include "backends/drawing/line_style.hpp"

#include <algorithm>
#include <array>

namespace rodwright::drawing {

namespace {

constexpr double dash = 12 * narrow_line;
constexpr double gap = 3 * narrow_line;
constexpr double long_dash = 24 * narrow_line;
constexpr double dot_length = 0.5 * narrow_line;
// Tables and faint lines stand back behind the drawing: thinner by one step of the series 0.13 0.18 0.25
// 0.35.
constexpr double fine_line = 0.18;
constexpr double finest_line = 0.13;
constexpr double medium_line = 0.35;
constexpr Colour grey{90, 90, 90};

struct Role {
    LineRole role;
    std::string_view name;
    LineStyle style;
};

const Role& role_of(LineRole role) {
    static const std::array<Role, all_line_roles.size()> table = {{
        {LineRole::visible, "visible", {wide_line, {}, black}},
        {LineRole::hidden, "hidden", {narrow_line, {dash, gap}, black}},
        {LineRole::smooth, "smooth", {fine_line, {}, grey}},
        {LineRole::centre, "centre", {narrow_line, {long_dash, gap, dot_length, gap}, black}},
        {LineRole::cutting_plane, "cutting-plane", {wide_line, {long_dash, gap, dot_length, gap}, black}},
        {LineRole::hatch, "hatch", {fine_line, {}, black}},
        {LineRole::dimension, "dimension", {narrow_line, {}, black}},
        {LineRole::silhouette, "silhouette", {wide_line, {}, black}},
        {LineRole::contour, "contour", {medium_line, {}, black}},
        {LineRole::crease, "crease", {fine_line, {}, black}},
        {LineRole::broken, "broken", {narrow_line, {}, black}},
        {LineRole::grain, "grain", {finest_line, {}, Colour{96, 72, 44}}},
        {LineRole::trail, "trail", {fine_line, {dash, gap}, grey}},
        {LineRole::table, "table", {fine_line, {}, grey}},
        {LineRole::frame, "frame", {0.7, {}, black}},
    }};
    return *std::find_if(table.begin(), table.end(), [&](const Role& each) { return each.role == role; });
}

}  // namespace

const LineStyle& line_style(LineRole role) {
    return role_of(role).style;
}

std::string_view name_of(LineRole role) {
    return role_of(role).name;
}

}  // namespace rodwright::drawing
