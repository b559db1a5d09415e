#include "backends/drawing/leader.hpp"

#include <cmath>
#include <numbers>
#include <optional>

#include "backends/drawing/dimension.hpp"
#include "backends/drawing/ink.hpp"
#include "backends/drawing/text_run.hpp"

namespace rodwright::drawing {

namespace {

constexpr double shortest = 7;    // mm
constexpr double longest = 60;    // mm: a longer line is hard to follow
constexpr double step = 1.5;      // mm
constexpr double leader_gap = 1;  // from the line's end to the text
constexpr double clear = 0.7;     // around the text
constexpr double crossing = 12;   // mm of line that crossing another line is as bad as

struct Candidate {
    Point tip;
    Point way;
    double length = 0;
    Text text;
    double cost = 0;
};

Candidate candidate(const std::string& words, Point tip, Point way, double length) {
    const Point end = tip + way * length;
    const bool right = way.x > 0;
    const Point baseline = end + Point{right ? leader_gap : -leader_gap, -dimension_height / 2};
    const Align align = right ? Align::left : Align::right;
    return {tip, way, length, {words, FontFace::regular, dimension_height, baseline, align, false}, length};
}

std::optional<Candidate> best_place(const Leader& leader, const Paper& paper, const Rect& room,
                                    const Fonts& fonts) {
    std::optional<Candidate> best;
    for (const LeaderTip& tip : leader.tips) {
        for (const Point way : tip.ways) {
            for (double length = shortest; length <= longest; length += step) {
                if (best && length >= best->cost) break;
                Candidate each = candidate(leader.text, tip.at, way, length);
                const Rect box = text_box(each.text, fonts).grown(clear);
                if (!room.contains(box) || !paper.is_free(box)) continue;
                const std::optional<int> crossed = paper.crossings(tip.at, tip.at + way * length);
                if (!crossed) break;  // a longer line crosses the same text
                each.cost += crossing * *crossed;
                if (!best || each.cost < best->cost) best = std::move(each);
            }
        }
    }
    return best;
}

}  // namespace

std::vector<Point> leader_ways(bool right, bool up) {
    std::vector<Point> ways;
    for (const double degrees : {45.0, 60.0, 30.0}) {
        const double angle = degrees * std::numbers::pi / 180;
        ways.push_back({(right ? 1 : -1) * std::cos(angle), (up ? 1 : -1) * std::sin(angle)});
    }
    return ways;
}

std::vector<Point> leader_ways() {
    std::vector<Point> ways;
    for (const bool up : {true, false}) {
        for (const bool right : {true, false}) {
            for (const Point way : leader_ways(right, up)) ways.push_back(way);
        }
    }
    return ways;
}

std::vector<LeaderTip> tips_on_circle(Point centre, double radius) {
    std::vector<LeaderTip> tips;
    for (const Point way : leader_ways()) tips.push_back({centre + way * radius, {way}});
    return tips;
}

bool draw_leader(Sheet& sheet, const Leader& leader, const Rect& room, const Fonts& fonts) {
    const std::optional<Candidate> best = best_place(leader, Paper(sheet, fonts), room, fonts);
    if (!best) return false;
    sheet.line(LineRole::dimension, best->tip, best->tip + best->way * best->length);
    draw_arrowhead(sheet, best->tip, best->way * -1);
    sheet.text(best->text);
    return true;
}

}  // namespace rodwright::drawing
