#include "compiler/solid/paper_lines.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <map>
#include <numbers>
#include <tuple>

#include "compiler/solid/stretches.hpp"

namespace rodwright {

namespace {

constexpr double full_turn = 2 * std::numbers::pi;

bool is_edge(const ViewLine& line) {
    return line.line_class == LineClass::sharp || line.line_class == LineClass::outline;
}

auto importance(const ViewLine& line) {
    return std::tuple(!is_edge(line), !line.visible, line.tag, line.line_class);
}

bool alike(const ViewLine& a, const ViewLine& b) {
    return importance(a) == importance(b);
}

// A straight line without ends: a point p is on it where normal . p = offset; `along` is square to the
// normal. Lines are found again by a cell of angle and offset, which neighbouring cells share at their
// borders.
struct Track {
    PaperPoint along;
    double offset;
    StretchMap map{paper::shortest_line};
};

double dot(PaperPoint a, PaperPoint b) {
    return a[0] * b[0] + a[1] * b[1];
}

PaperPoint normal_of(const Track& track) {
    return {-track.along[1], track.along[0]};
}

// Of the two directions of a line, the one to the right, or else up.
PaperPoint direction_of(const ViewLine& line) {
    const PaperPoint a = line.points[0];
    const PaperPoint b = line.points[1];
    const double length = std::hypot(b[0] - a[0], b[1] - a[1]);
    PaperPoint unit = {(b[0] - a[0]) / length, (b[1] - a[1]) / length};
    const bool level = std::abs(unit[0]) < 1e-9;
    if (level ? unit[1] < 0 : unit[0] < 0) unit = {-unit[0], -unit[1]};
    return unit;
}

using Cell = std::pair<long, long>;

class LineTracks {
  public:
    Track& track_for(const ViewLine& line) {
        const Track wanted = make(line);
        const Cell cell = cell_of(wanted);
        for (long i = -1; i <= 1; ++i) {
            for (long j = -1; j <= 1; ++j) {
                if (Track* found =
                        find({(cell.first + i + angle_cells) % angle_cells, cell.second + j}, line)) {
                    return *found;
                }
            }
        }
        // A line that is nearly upright points up or down; it is looked for with both signs of its offset.
        if (Track* found = find_turned(cell, line)) return *found;
        cells_[cell].push_back(tracks_.size());
        tracks_.push_back(wanted);
        return tracks_.back();
    }

    const std::deque<Track>& tracks() const { return tracks_; }

  private:
    static constexpr long angle_cells = 720;
    static constexpr double offset_cell = 1.0;  // mm

    static Track make(const ViewLine& line) {
        Track track{direction_of(line), 0};
        track.offset = dot(normal_of(track), line.points[0]);
        return track;
    }

    static Cell cell_of(const Track& track) {
        const double angle = std::atan2(track.along[1], track.along[0]) + std::numbers::pi / 2;
        const long cell = std::lround(angle / std::numbers::pi * angle_cells) % angle_cells;
        return {cell, std::lround(track.offset / offset_cell)};
    }

    Track* find(const Cell& cell, const ViewLine& line) {
        const auto at = cells_.find(cell);
        if (at == cells_.end()) return nullptr;
        for (const std::size_t index : at->second) {
            Track& track = tracks_[index];
            const PaperPoint normal = normal_of(track);
            const auto on = [&](PaperPoint p) {
                return std::abs(dot(normal, p) - track.offset) < paper::same_place;
            };
            if (on(line.points[0]) && on(line.points[1])) return &track;
        }
        return nullptr;
    }

    Track* find_turned(const Cell& cell, const ViewLine& line) {
        if (cell.first > 1 && cell.first < angle_cells - 1) return nullptr;
        for (long i = -1; i <= 1; ++i) {
            for (long j = -1; j <= 1; ++j) {
                if (Track* found = find({(i + angle_cells) % angle_cells, j - cell.second}, line))
                    return found;
            }
        }
        return nullptr;
    }

    std::map<Cell, std::vector<std::size_t>> cells_;
    std::deque<Track> tracks_;
};

using Sources = std::vector<ViewLine>;

auto same_look(const Sources& lines) {
    return [&lines](std::size_t a, std::size_t b) { return alike(lines[a], lines[b]); };
}

PaperPoint point_on(const Track& track, double at) {
    const PaperPoint normal = normal_of(track);
    return {at * track.along[0] + track.offset * normal[0], at * track.along[1] + track.offset * normal[1]};
}

void add_straight(const Sources& lines, std::vector<ViewLine>& out) {
    LineTracks all;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const ViewLine& line = lines[i];
        if (line.shape != LineShape::line) continue;
        if (std::hypot(line.points[1][0] - line.points[0][0], line.points[1][1] - line.points[0][1]) <
            paper::shortest_line) {
            continue;
        }
        Track& track = all.track_for(line);
        const double a = dot(track.along, line.points[0]);
        const double b = dot(track.along, line.points[1]);
        track.map.add({std::min(a, b), std::max(a, b), i});
    }
    for (const Track& track : all.tracks()) {
        for (const Stretch& piece : track.map.joined(same_look(lines))) {
            ViewLine line = lines[piece.source];
            line.points = {point_on(track, piece.low), point_on(track, piece.high)};
            out.push_back(std::move(line));
        }
    }
}

// All arcs of one circle, by the length along it from the right, turning left.
struct Round {
    PaperPoint centre;
    double radius;
    StretchMap map{paper::shortest_line};
};

Round& round_for(const ViewLine& line, std::deque<Round>& rounds) {
    for (Round& each : rounds) {
        const bool same = std::hypot(each.centre[0] - line.centre[0], each.centre[1] - line.centre[1]) <
                              paper::same_place &&
                          std::abs(each.radius - line.radius) < paper::same_place;
        if (same) return each;
    }
    rounds.push_back({line.centre, line.radius});
    return rounds.back();
}

double angle_at(const ViewLine& arc, PaperPoint point) {
    const double angle = std::atan2(point[1] - arc.centre[1], point[0] - arc.centre[0]);
    return angle < 0 ? angle + full_turn : angle;
}

// How far one must turn left from one angle to another.
double turn_left(double from, double to) {
    return to < from ? to - from + full_turn : to - from;
}

void add_arc(const ViewLine& arc, std::size_t source, Round& round) {
    if (arc.closed) {
        round.map.add({0, full_turn * round.radius, source});
        return;
    }
    double from = angle_at(arc, arc.points[0]);
    double to = angle_at(arc, arc.points[2]);
    if (turn_left(from, angle_at(arc, arc.points[1])) > turn_left(from, to)) std::swap(from, to);
    if (to >= from) {
        round.map.add({from * round.radius, to * round.radius, source});
    } else {
        round.map.add({from * round.radius, full_turn * round.radius, source});
        round.map.add({0, to * round.radius, source});
    }
}

// The end of the circle's range is its beginning.
template <typename Same>
void join_round_the_end(std::vector<Stretch>& pieces, double circumference, Same same) {
    if (pieces.size() < 2 || !same(pieces.front().source, pieces.back().source)) return;
    const bool touch = pieces.front().low < paper::shortest_line &&
                       pieces.back().high > circumference - paper::shortest_line;
    if (!touch) return;
    pieces.back().high = circumference + pieces.front().high;
    pieces.erase(pieces.begin());
}

ViewLine piece_of(const ViewLine& arc, const Round& round, const Stretch& piece) {
    const auto at = [&](double length) {
        const double angle = length / round.radius;
        return PaperPoint{round.centre[0] + round.radius * std::cos(angle),
                          round.centre[1] + round.radius * std::sin(angle)};
    };
    ViewLine line = arc;
    line.centre = round.centre;
    line.radius = round.radius;
    line.closed = piece.high - piece.low > full_turn * round.radius - paper::shortest_line;
    const PaperPoint start = at(piece.low);
    line.points = {start, at((piece.low + piece.high) / 2), line.closed ? start : at(piece.high)};
    return line;
}

void add_arcs(const Sources& lines, std::vector<ViewLine>& out) {
    std::deque<Round> rounds;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (lines[i].shape == LineShape::arc) add_arc(lines[i], i, round_for(lines[i], rounds));
    }
    for (const Round& round : rounds) {
        std::vector<Stretch> pieces = round.map.joined(same_look(lines));
        join_round_the_end(pieces, full_turn * round.radius, same_look(lines));
        for (const Stretch& piece : pieces) out.push_back(piece_of(lines[piece.source], round, piece));
    }
}

bool near(PaperPoint a, PaperPoint b) {
    return std::hypot(a[0] - b[0], a[1] - b[1]) < paper::chord_tolerance;
}

// Curves are compared whole: at both ends and in the middle, either way round.
bool same_curve(const ViewLine& a, const ViewLine& b) {
    const bool forward = near(a.points.front(), b.points.front()) && near(a.points.back(), b.points.back());
    const bool backward = near(a.points.front(), b.points.back()) && near(a.points.back(), b.points.front());
    return (forward || backward) && near(a.points[a.points.size() / 2], b.points[b.points.size() / 2]);
}

void add_curves(const Sources& lines, std::vector<ViewLine>& out) {
    std::vector<ViewLine> kept;
    for (const ViewLine& line : lines) {
        if (line.shape != LineShape::curve) continue;
        const auto covered = [&](const ViewLine& other) { return same_curve(line, other); };
        if (std::none_of(kept.begin(), kept.end(), covered)) kept.push_back(line);
    }
    std::move(kept.begin(), kept.end(), std::back_inserter(out));
}

}  // namespace

std::vector<ViewLine> each_line_once(const std::vector<ViewLine>& lines) {
    Sources sorted = lines;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const ViewLine& a, const ViewLine& b) { return importance(a) < importance(b); });
    std::vector<ViewLine> out;
    add_straight(sorted, out);
    add_arcs(sorted, out);
    add_curves(sorted, out);
    return out;
}

}  // namespace rodwright
