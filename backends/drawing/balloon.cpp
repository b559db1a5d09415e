#include "backends/drawing/balloon.hpp"

#include <algorithm>
#include <cmath>

#include "backends/drawing/spread.hpp"

namespace rodwright::drawing {

namespace {

constexpr double dot_radius = 0.7;
constexpr double apart = 2 * balloon_radius + 1.2;

double turn_of(Point a, Point b, Point c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool cross_each_other(Point a, Point b, Point c, Point d) {
    return turn_of(a, b, c) * turn_of(a, b, d) < 0 && turn_of(c, d, a) * turn_of(c, d, b) < 0;
}

// Swaps neighbours whose leaders cross until none do; each swap shortens the leaders together, so this ends,
// and the limit only guards against rounding.
void uncross(std::vector<Callout>& callouts, const std::vector<double>& places, double column_x) {
    for (std::size_t round = 0; round < callouts.size(); ++round) {
        bool swapped = false;
        for (std::size_t i = 0; i < callouts.size(); ++i) {
            for (std::size_t j = i + 1; j < callouts.size(); ++j) {
                const Point first{column_x, places[i]};
                const Point second{column_x, places[j]};
                if (!cross_each_other(first, callouts[i].target, second, callouts[j].target)) continue;
                std::swap(callouts[i], callouts[j]);
                swapped = true;
            }
        }
        if (!swapped) return;
    }
}

void draw_leader(Sheet& sheet, Point centre, Point target) {
    const Point way = target - centre;
    const double length = std::hypot(way.x, way.y);
    if (length <= balloon_radius) return;
    sheet.line(LineRole::dimension, centre + way * (balloon_radius / length), target);
    sheet.items.emplace_back(Disc{black, target, dot_radius});
}

}  // namespace

void draw_balloon(Sheet& sheet, Point centre, const std::string& letter, const Fonts& fonts) {
    sheet.circle(LineRole::dimension, centre, balloon_radius);
    const double height = height_to_fit(letter, FontFace::bold, balloon_text, 1.55 * balloon_radius, fonts);
    sheet.text({letter, FontFace::bold, height, centre - Point{0, height / 2}, Align::middle, false});
}

std::size_t capacity(const BalloonLine& line) {
    return 1 + static_cast<std::size_t>(std::max(0.0, line.high - line.low) / apart);
}

void draw_callouts(Sheet& sheet, std::vector<Callout> callouts, const BalloonLine& line, const Fonts& fonts) {
    // A row is worked out as a column with x and y changed about.
    const auto turned = [&](Point p) { return line.run == Run::upright ? p : Point{p.y, p.x}; };
    for (Callout& callout : callouts) callout.target = turned(callout.target);
    const auto by_height = [](const Callout& a, const Callout& b) { return a.target.y < b.target.y; };
    std::stable_sort(callouts.begin(), callouts.end(), by_height);
    std::vector<double> wanted;
    for (const Callout& callout : callouts) wanted.push_back(callout.target.y);
    const std::vector<double> places = spread(wanted, apart, line.low, line.high);
    uncross(callouts, places, line.at);
    for (std::size_t i = 0; i < callouts.size(); ++i) {
        const Point centre = turned({line.at, places[i]});
        draw_leader(sheet, centre, turned(callouts[i].target));
        draw_balloon(sheet, centre, callouts[i].letter, fonts);
        const Rect box = Rect{centre.x, centre.y, centre.x, centre.y}.grown(balloon_radius);
        sheet.items.emplace_back(Link{box, callouts[i].letter});
    }
}

}  // namespace rodwright::drawing
