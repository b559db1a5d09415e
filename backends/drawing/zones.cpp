#include "backends/drawing/zones.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace rodwright::drawing {

namespace {

constexpr double character_height = 3.5;
constexpr double under_character = 1;  // from the band's lower edge; there are no descenders
constexpr double mark_length = 10;

// One side of the frame: `along` runs on it, `away` from it outwards.
struct Side {
    bool upright = false;  // left or right
    double frame = 0;      // its x or y
    double outwards = 1;

    Point at(double along, double away) const {
        const double off = frame + outwards * away;
        return upright ? Point{off, along} : Point{along, off};
    }
};

// Between fields, and both ends.
std::vector<double> borders_of(double low, double high, double middle, double field) {
    std::vector<double> borders = {low};
    constexpr double least = 1e-6;
    const double first = middle - std::floor((middle - low) / field - least) * field;
    for (double at = first; at < high - least; at += field) {
        if (at > low + least) borders.push_back(at);
    }
    borders.push_back(high);
    return borders;
}

std::string letter_of(std::size_t index) {
    constexpr std::string_view letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    return std::string(1, letters[index % letters.size()]);
}

void draw_side(Sheet& sheet, const Side& side, const std::vector<double>& borders, bool reversed) {
    sheet.line(LineRole::table, side.at(borders.front(), zone_band), side.at(borders.back(), zone_band));
    const std::size_t count = borders.size() - 1;
    for (std::size_t i = 0; i < count; ++i) {
        if (i > 0) sheet.line(LineRole::table, side.at(borders[i], 0), side.at(borders[i], zone_band));
        const std::size_t index = reversed ? count - 1 - i : i;
        const std::string name = side.upright ? letter_of(index) : std::to_string(index + 1);
        const Point middle = side.at((borders[i] + borders[i + 1]) / 2, zone_band / 2);
        sheet.text({name, FontFace::regular, character_height,
                    middle - Point{0, side.upright ? character_height / 2 : zone_band / 2 - under_character},
                    Align::middle, false});
    }
}

void draw_centring_mark(Sheet& sheet, const Side& side, double middle, double margin) {
    sheet.line(LineRole::frame, side.at(middle, 0), side.at(middle, std::min(mark_length, margin)));
}

}  // namespace

std::size_t zone_count(double low, double high, double middle, double field) {
    return borders_of(low, high, middle, field).size() - 1;
}

void draw_border(Sheet& sheet, const Zones& zones) {
    const Rect& frame = sheet.frame;
    const Point middle{sheet.width / 2, sheet.height / 2};
    const Side left{true, frame.left, -1};
    const Side right{true, frame.right, 1};
    const Side lower{false, frame.bottom, -1};
    const Side upper{false, frame.top, 1};
    sheet.items.emplace_back(GroupStart{"border", ""});
    draw_centring_mark(sheet, left, middle.y, frame.left);
    draw_centring_mark(sheet, right, middle.y, sheet.width - frame.right);
    draw_centring_mark(sheet, lower, middle.x, frame.bottom);
    draw_centring_mark(sheet, upper, middle.x, sheet.height - frame.top);
    if (zones.sides != Zones::Sides::none) {
        const auto across = borders_of(frame.left, frame.right, middle.x, zones.across);
        const auto upright = borders_of(frame.bottom, frame.top, middle.y, zones.upright);
        const bool all = zones.sides == Zones::Sides::all;
        // Fields are counted from the left and from below; A at the top is the last of them.
        const bool figures_reversed = zones.from_lower_right;
        const bool letters_reversed = !zones.from_lower_right;
        draw_side(sheet, upper, across, figures_reversed);
        draw_side(sheet, right, upright, letters_reversed);
        if (all) draw_side(sheet, lower, across, figures_reversed);
        if (all) draw_side(sheet, left, upright, letters_reversed);
    }
    sheet.items.emplace_back(GroupEnd{});
}

}  // namespace rodwright::drawing
