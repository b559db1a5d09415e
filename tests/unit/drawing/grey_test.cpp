// Printed without colours the drawings say the same: what lies side by side is parted by its tone or by a
// line.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "backends/drawing/curve.hpp"
#include "backends/drawing/depth_buffer.hpp"
#include "backends/drawing/pictorial.hpp"
#include "tests/unit/drawing/making.hpp"

using namespace rodwright;
using namespace rodwright::drawing;

namespace {

// Lightness L* of CIE 1976, 0 to 100, of an sRGB colour (IEC 61966-2-1; both from memory).
double lightness(Colour colour) {
    const auto linear = [](std::uint8_t value) {
        const double part = value / 255.0;
        return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
    };
    const double y =
        0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
    return y > 216.0 / 24389 ? 116 * std::cbrt(y) - 16 : y * 24389 / 27;
}

// Two greys are told apart side by side from about 1 on; a printer's dots take some of that.
constexpr double enough = 4;

bool inside(const std::vector<Point>& outline, Point at) {
    bool odd = false;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point& a = outline[i];
        const Point& b = outline[(i + 1) % outline.size()];
        if ((a.y > at.y) != (b.y > at.y) && at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x)) odd = !odd;
    }
    return odd;
}

double distance(Point at, Point a, Point b) {
    const Point way = b - a;
    const Point off = at - a;
    const double square = way.x * way.x + way.y * way.y;
    const double part = square > 0 ? std::clamp((off.x * way.x + off.y * way.y) / square, 0.0, 1.0) : 0;
    return std::hypot(off.x - way.x * part, off.y - way.y * part);
}

// Lines that part two areas. Thin ones are grey, which a printer without colours has too.
bool is_edge(LineRole role) {
    return role == LineRole::silhouette || role == LineRole::contour || role == LineRole::crease ||
           role == LineRole::smooth || role == LineRole::broken;
}

class Ink {
  public:
    explicit Ink(const Sheet& sheet) {
        for (const Item& item : sheet.items) {
            if (const auto* fill = std::get_if<Fill>(&item)) fills_.push_back({*extent_of(item), fill});
            const auto* stroke = std::get_if<Stroke>(&item);
            const auto* arc = std::get_if<Arc>(&item);
            if ((stroke != nullptr && is_edge(stroke->role)) || (arc != nullptr && is_edge(arc->role)))
                edges_.push_back({*extent_of(item), points_along(item)});
        }
    }

    struct Filled {
        Rect extent;
        const Fill* fill = nullptr;
    };
    const std::vector<Filled>& fills() const { return fills_; }

    // What was filled there last; null for the bare paper.
    const Fill* fill_at(Point at) const {
        for (auto each = fills_.rbegin(); each != fills_.rend(); ++each) {
            if (each->extent.contains({at.x, at.y, at.x, at.y}) && inside(each->fill->points, at))
                return each->fill;
        }
        return nullptr;
    }

    bool line_at(Point at) const {
        constexpr double near = 0.12;  // mm: less than half of a line and the grid that regions are found on
        return std::any_of(edges_.begin(), edges_.end(), [&](const auto& edge) {
            if (!edge.first.grown(near).contains({at.x, at.y, at.x, at.y})) return false;
            for (std::size_t i = 1; i < edge.second.size(); ++i) {
                if (distance(at, edge.second[i - 1], edge.second[i]) < near) return true;
            }
            return false;
        });
    }

  private:
    std::vector<Filled> fills_;
    std::vector<std::pair<Rect, std::vector<Point>>> edges_;
};

Colour colour_of(const Fill* fill) {
    return fill != nullptr ? fill->colour : white;
}

// Places where two areas meet that neither tone nor a line parts, of so many looked at.
struct Borders {
    std::size_t all = 0;
    std::vector<Point> unclear;
};

Borders borders_of(const Sheet& sheet) {
    const Ink ink(sheet);
    Borders borders;
    for (const Ink::Filled& each : ink.fills()) {
        const std::vector<Point>& outline = each.fill->points;
        for (std::size_t i = 0; i < outline.size(); ++i) {
            const Point a = outline[i];
            const Point way = outline[(i + 1) % outline.size()] - a;
            const double length = std::hypot(way.x, way.y);
            if (length < 0.4) continue;  // mm: too short to look to both sides of
            const Point middle = a + way * 0.5;
            const Point aside = Point{-way.y, way.x} * (0.1 / length);
            const Fill* left = ink.fill_at(middle + aside);
            const Fill* right = ink.fill_at(middle - aside);
            if (left == right || colour_of(left) == colour_of(right)) continue;
            ++borders.all;
            const double step = std::abs(lightness(colour_of(left)) - lightness(colour_of(right)));
            if (step < enough && !ink.line_at(middle)) borders.unclear.push_back(middle);
        }
    }
    return borders;
}

std::array<double, 3> tones_of_box(const Colour& wood) {
    std::array<double, 3> tones{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        Point3 normal{};
        normal[axis] = axis == 1 ? -1 : 1;  // above, in front, right: what an isometric view shows
        tones[axis] = lightness(shade(wood, axes_of({{1, -1, 1}, {0, 0, 1}}).seen(normal)));
    }
    return tones;
}

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("the three faces of a box differ in grey, in every wood there is") {
        for (const char* wood : {"#ead9b8", "#c8b089", "#8a5a3a", "#3a2a20", "#ffffff"}) {
            CAPTURE(wood);
            const std::array<double, 3> tones = tones_of_box(colour_of(wood));
            for (std::size_t i = 0; i < 3; ++i) CHECK(std::abs(tones[i] - tones[(i + 1) % 3]) >= enough);
        }
    }

    TEST_CASE("on the sheets of the examples no two areas are parted by colour alone") {
        for (const std::string& name : testing::example_names()) {
            testing::Making& making = testing::made_example(name);
            std::size_t all = 0;
            for (const Sheet& sheet : making.sheets({})) {
                CAPTURE(name);
                CAPTURE(sheet.title);
                const Borders borders = borders_of(sheet);
                all += borders.all;
                CHECK(borders.unclear.empty());
                for (const Point& at : borders.unclear) {
                    CAPTURE(at.x);
                    CAPTURE(at.y);
                    FAIL_CHECK("neither tone nor line");
                    break;
                }
            }
            CHECK(all > 1000);
        }
    }

    TEST_CASE("the check finds two woods of one tone without a line between them") {
        Sheet sheet;
        sheet.fill({200, 150, 150}, {{0, 0}, {10, 0}, {10, 10}, {0, 10}});
        sheet.fill({150, 172, 150}, {{10, 0}, {20, 0}, {20, 10}, {10, 10}});
        CHECK(std::abs(lightness({200, 150, 150}) - lightness({150, 172, 150})) < enough);
        const Borders bare = borders_of(sheet);
        CHECK(bare.unclear.size() == 2);  // the border between them, looked at from both
        sheet.line(LineRole::contour, {10, 0}, {10, 10});
        CHECK(borders_of(sheet).unclear.empty());
        CHECK(borders_of(sheet).all == bare.all);
    }
}
