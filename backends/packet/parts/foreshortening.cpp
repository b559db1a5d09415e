#include "backends/packet/parts/foreshortening.hpp"

#include <algorithm>

#include "backends/packet/parts/part_geometry.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double stub = 30;         // mm of the part left at either side of the break
constexpr double least_gain = 150;  // mm: less is not worth a broken drawing
constexpr double break_gap = 20;    // mm of the part

// Whether an arc runs over any of the stretch: its shape is not to be guessed across a break.
bool is_curved(const Kind& kind, Direction along, const Rational& from, const Rational& to) {
    const Box stock = overall_box(kind);
    return std::any_of(kind.features.begin(), kind.features.end(), [&](const Feature& feature) {
        const std::optional<Hollow> hollow = hollow_of(feature.body, stock);
        if (!hollow || hollow->across != along.axis) return false;
        const Rational a = distance_along(kind, along, hollow->start);
        const Rational b = distance_along(kind, along, Rational(hollow->start + hollow->chord));
        return std::min(a, b) < to && std::max(a, b) > from;
    });
}

ViewLine moved(ViewLine line, double by) {
    for (PaperPoint& point : line.points) point[0] += by;
    line.centre[0] += by;
    return line;
}

double leftmost(const ViewLine& line) {
    double x = line.points[0][0];
    for (const PaperPoint& point : line.points) x = std::min(x, point[0]);
    return x;
}

double rightmost(const ViewLine& line) {
    double x = line.points[0][0];
    for (const PaperPoint& point : line.points) x = std::max(x, point[0]);
    return x;
}

// A straight line's part between two places; the line crosses at least one of them.
ViewLine part_of(const ViewLine& line, double low, double high) {
    PaperPoint a = line.points[0];
    PaperPoint b = line.points[1];
    if (a[0] > b[0]) std::swap(a, b);
    const auto at = [&](double x) {
        const double part = (x - a[0]) / (b[0] - a[0]);
        return PaperPoint{x, a[1] + (b[1] - a[1]) * part};
    };
    ViewLine piece = line;
    piece.points = {a[0] < low ? at(low) : a, b[0] > high ? at(high) : b};
    return piece;
}

}  // namespace

std::optional<Foreshortening> foreshortening(const Kind& kind, Direction along, double body_left) {
    std::vector<Rational> places = stations(kind, along);
    places.insert(places.begin(), Rational(0));
    places.push_back(kind.size[along.axis]);
    std::optional<Foreshortening> longest;
    double most = least_gain + break_gap;
    for (std::size_t i = 1; i < places.size(); ++i) {
        const double from = places[i - 1].get_d() + stub;
        const double to = places[i].get_d() - stub;
        if (to - from <= most || is_curved(kind, along, places[i - 1], places[i])) continue;
        most = to - from;
        longest = Foreshortening{body_left + from, body_left + to, break_gap};
    }
    return longest;
}

Projected shortened(const Projected& view, const Foreshortening& stretch) {
    constexpr double beyond = 1e9;
    std::vector<ViewLine> lines;
    for (const ViewLine& line : view.lines) {
        const double left = leftmost(line);
        const double right = rightmost(line);
        if (right <= stretch.from) {
            lines.push_back(line);
        } else if (left >= stretch.to) {
            lines.push_back(moved(line, -stretch.removed()));
        } else if (line.shape == LineShape::line) {
            if (left < stretch.from) lines.push_back(part_of(line, -beyond, stretch.from));
            if (right > stretch.to)
                lines.push_back(moved(part_of(line, stretch.to, beyond), -stretch.removed()));
        }
    }
    return projected(std::move(lines));
}

void draw_break_line(Sheet& sheet, double x, double low, double high) {
    constexpr double past = 2.5;    // mm
    constexpr double zigzag = 1.2;  // mm, half its height and width
    const double middle = (low + high) / 2;
    sheet.polyline(LineRole::dimension, {{x, low - past},
                                         {x, middle - zigzag},
                                         {x - zigzag, middle - zigzag / 3},
                                         {x + zigzag, middle + zigzag / 3},
                                         {x, middle + zigzag},
                                         {x, high + past}});
}

}  // namespace rodwright::packet
