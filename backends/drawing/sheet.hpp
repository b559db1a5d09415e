// A sheet of paper as a display list: what is drawn, in the order it is drawn, and nothing of how a file
// format writes it.
//
// Millimetres on the paper; the origin is the sheet's lower left corner, y points up.
#pragma once

#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace rodwright::drawing {

struct Point {
    double x = 0;
    double y = 0;
    friend bool operator==(const Point&, const Point&) = default;
};
inline Point operator+(Point a, Point b) {
    return {a.x + b.x, a.y + b.y};
}
inline Point operator-(Point a, Point b) {
    return {a.x - b.x, a.y - b.y};
}
inline Point operator*(Point a, double factor) {
    return {a.x * factor, a.y * factor};
}
inline double distance(Point a, Point b) {
    return std::hypot(b.x - a.x, b.y - a.y);
}

struct Rect {
    double left = 0;
    double bottom = 0;
    double right = 0;
    double top = 0;

    double width() const { return right - left; }
    double height() const { return top - bottom; }
    Point centre() const { return {(left + right) / 2, (bottom + top) / 2}; }
    Rect grown(double by) const { return {left - by, bottom - by, right + by, top + by}; }
    bool contains(const Rect& other, double slack = 1e-6) const;
    // True if the insides share more than `slack` in both directions.
    bool overlaps(const Rect& other, double slack = 1e-6) const;
};
// The smallest rectangle around both.
Rect around(const Rect& a, const Rect& b);
// What lies in both; turned inside out (right < left, top < bottom) where they are apart.
Rect common(const Rect& a, const Rect& b);
Rect moved(const Rect& box, Point by);

// What a line is for; line_style.hpp says how each is drawn.
enum class LineRole : std::uint8_t {
    visible,
    hidden,
    smooth,  // where a round-over runs out into a flat face
    centre,
    cutting_plane,
    hatch,       // wood that a section goes through
    dimension,   // dimension, extension and leader lines, grain arrows
    silhouette,  // of a pictorial: a part against nothing
    contour,     // of a pictorial: a part against another one
    crease,      // of a pictorial: between two faces that are seen
    broken,      // of a pictorial: where the drawing ends and the wood goes on
    grain,       // of a pictorial: along the fibres
    trail,       // of a pictorial: the way a part goes in
    table,
    frame,
};
inline constexpr std::array all_line_roles = {
    LineRole::visible, LineRole::hidden,    LineRole::smooth,     LineRole::centre,  LineRole::cutting_plane,
    LineRole::hatch,   LineRole::dimension, LineRole::silhouette, LineRole::contour, LineRole::crease,
    LineRole::broken,  LineRole::grain,     LineRole::trail,      LineRole::table,   LineRole::frame,
};

struct Colour {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
    friend bool operator==(const Colour&, const Colour&) = default;
};
inline constexpr Colour black{};
inline constexpr Colour white{255, 255, 255};

// From point to point; or, `smooth`, a curve without corners through all of them.
struct Stroke {
    LineRole role{};
    std::vector<Point> points;
    bool closed = false;
    bool smooth = false;
};

// Part of a circle, `sweep` radians on from the angle `start`, counter-clockwise where it is above 0.
struct Arc {
    LineRole role{};
    Point centre;
    double radius = 0;
    double start = 0;
    double sweep = 0;

    bool whole() const;
    Point at(double angle) const;
    Point from() const { return at(start); }
    Point to() const { return at(start + sweep); }
};

struct Fill {
    Colour colour;
    std::vector<Point> points;
};

struct Disc {
    Colour colour;
    Point centre;
    double radius = 0;
};

enum class FontFace : std::uint8_t { regular, bold };
enum class Align : std::uint8_t { left, middle, right };

// One line of text on its baseline. Fractions in it (`1 5/8"`) are drawn stacked; see text_run.hpp.
struct Text {
    std::string text;
    FontFace face = FontFace::regular;
    double height = 2.5;  // of a capital letter
    Point at;             // of the baseline: its left end, middle or right end as `align` says
    Align align = Align::left;
    bool upward = false;  // turned a quarter to the left: read from the right
};

// What is drawn between the two belongs together: a view, a part in it, a feature of that. Formats that can
// say so, do.
struct GroupStart {
    std::string name;    // "part A1, leg": what it is, in words
    std::string source;  // "keepers_table.rod:34", or empty
};
struct GroupEnd {};

// Leads to the first sheet with that anchor.
struct Link {
    Rect box;
    std::string anchor;
};

// Of what is drawn between the two only what lies in the box is seen. They nest.
struct ClipStart {
    Rect box;
};
struct ClipEnd {};

using Item = std::variant<Stroke, Arc, Fill, Disc, Text, GroupStart, GroupEnd, Link, ClipStart, ClipEnd>;

struct Sheet {
    std::string title;                 // in the page list and the outline
    std::string section;               // of the outline that it stands in; empty: none
    std::vector<std::string> anchors;  // what links to it may name
    double width = 0;
    double height = 0;
    Rect frame;  // nothing is drawn outside it
    std::vector<Item> items;

    void line(LineRole role, Point from, Point to);
    void polyline(LineRole role, std::vector<Point> points, bool closed = false);
    void rectangle(LineRole role, const Rect& box);
    void circle(LineRole role, Point centre, double radius);
    void fill(Colour colour, std::vector<Point> points);
    void text(Text text);
};

// Where an item is on the paper but for the width of its lines and the letters of a text; empty for what
// draws nothing.
std::optional<Rect> extent_of(const Item& item);

// The same item somewhere else.
Item moved(Item item, Point by);

}  // namespace rodwright::drawing
