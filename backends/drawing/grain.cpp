#include "backends/drawing/grain.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rodwright::drawing {

namespace {

constexpr double pitch = 1.8;      // mm on the paper between strokes
constexpr double end_grain = 0.7;  // a face whose normal runs that much along the fibres shows their ends

// The same number for the same line of the same part, evenly between 0 and 1 (the mixer of SplitMix64, public
// domain).
double drawn_number(std::uint32_t tag, std::int64_t line, std::uint32_t salt) {
    std::uint64_t z = (std::uint64_t{tag} << 40U) ^ (static_cast<std::uint64_t>(line) << 8U) ^ salt;
    z += 0x9e3779b97f4a7c15U;
    z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9U;
    z = (z ^ (z >> 27U)) * 0x94d049bb133111ebU;
    return static_cast<double>((z ^ (z >> 31U)) >> 11U) * 0x1p-53;
}

Point on_paper(const Point3& seen, const ViewPlace& place) {
    return place.on_sheet(Point{seen[0], seen[1]});
}

double dot(Point a, Point b) {
    return a.x * b.x + a.y * b.y;
}

struct Span {
    double low = 0;
    double high = 0;
};

// How far the rectangle reaches along a direction, seen from `origin`.
Span reach(const Rect& box, Point origin, Point direction) {
    Span span{1e300, -1e300};
    for (const Point corner : {Point{box.left, box.bottom}, Point{box.right, box.bottom},
                               Point{box.left, box.top}, Point{box.right, box.top}}) {
        const double along = dot(corner - origin, direction);
        span = {std::min(span.low, along), std::max(span.high, along)};
    }
    return span;
}

// One line of fibres, drawn in strokes with gaps, all of uneven length.
void add_strokes(std::vector<Polyline>& strokes, Point start, Point along, Span span, std::uint32_t tag,
                 std::int64_t line) {
    double at = span.low - 20 * drawn_number(tag, line, 1);
    for (std::uint32_t i = 2; at < span.high; i += 2) {
        const double length = 6 + 26 * drawn_number(tag, line, i);
        const double from = std::max(at, span.low);
        const double to = std::min(at + length, span.high);
        if (to > from) strokes.push_back({start + along * from, start + along * to});
        at += length + 2 + 9 * drawn_number(tag, line, i + 1);
    }
}

std::vector<Polyline> along_fibres(const Hit& hit, Point origin, Point fibres, const Rect& over) {
    const Point along = fibres * (1 / std::hypot(fibres.x, fibres.y));
    const Point across{-along.y, along.x};
    const Span wide = reach(over, origin, across);
    const Span span = reach(over, origin, along);
    std::vector<Polyline> strokes;
    const auto last = static_cast<std::int64_t>(std::ceil(wide.high / pitch));
    for (auto line = static_cast<std::int64_t>(std::floor(wide.low / pitch)); line <= last; ++line) {
        const double place = pitch * (static_cast<double>(line) + 0.8 * drawn_number(hit.part->tag, line, 0));
        add_strokes(strokes, origin + across * place, along, span, hit.part->tag, line);
    }
    return strokes;
}

// The paper as the cut end of a part sees it: model millimetres across and up from the pith.
struct EndFace {
    Point pith;
    Point across;  // one millimetre of the part's width on the paper
    Point up;      // and one of its thickness

    Point at(double radius, double angle) const {
        return pith + across * (radius * std::cos(angle)) + up * (radius * std::sin(angle));
    }
    double distance(Point on_paper) const {
        const Point away = on_paper - pith;
        const double area = across.x * up.y - across.y * up.x;
        return std::hypot(away.x * up.y - away.y * up.x, across.x * away.y - across.y * away.x) /
               std::abs(area);
    }
};

// The pieces of a ring that may lie within the rectangle.
void add_ring(std::vector<Polyline>& rings, const EndFace& face, double radius, const Rect& over) {
    constexpr int corners = 96;
    const double step = 2 * std::numbers::pi / corners;
    const double stride =
        radius * step * std::max(std::hypot(face.across.x, face.across.y), std::hypot(face.up.x, face.up.y));
    const Rect near = over.grown(stride);
    Polyline piece;
    for (int i = 0; i <= corners; ++i) {
        const Point point = face.at(radius, i * step);
        const bool inside = near.contains({point.x, point.y, point.x, point.y});
        if (inside) piece.push_back(point);
        if (inside && i < corners) continue;
        if (piece.size() > 1) rings.push_back(std::move(piece));
        piece.clear();
    }
}

// Rings round a pith that lies outside the part, below its middle.
std::vector<Polyline> end_rings(const Hit& hit, const ViewAxes& axes, const ViewPlace& place,
                                const Rect& over) {
    const Pose& pose = hit.part->pose;
    const auto on_sheet = [&](double y, double z) {
        return on_paper(axes.seen(posed(pose, {hit.own[0], y, z})), place);
    };
    const Point pith = on_sheet(8, -25);
    const EndFace face{pith, on_sheet(9, -25) - pith, on_sheet(8, -24) - pith};
    double far = 0;
    for (const Point corner : {Point{over.left, over.bottom}, Point{over.right, over.bottom},
                               Point{over.left, over.top}, Point{over.right, over.top}}) {
        far = std::max(far, face.distance(corner));
    }
    const double wide = std::max(std::hypot(face.across.x, face.across.y), std::hypot(face.up.x, face.up.y));
    const double between = 0.7 * pitch / wide;
    constexpr double most = 500;  // rings: more would be a grey surface
    std::vector<Polyline> rings;
    for (double ring = 1; ring <= std::min(most, far / between); ++ring)
        add_ring(rings, face, ring * between, over);
    return rings;
}

}  // namespace

std::vector<Polyline> grain_strokes(const Hit& hit, const ViewAxes& axes, const ViewPlace& place,
                                    const Rect& over) {
    if (std::abs(hit.triangle->normal[0]) > end_grain) return end_rings(hit, axes, place, over);
    const Pose& pose = hit.part->pose;
    const Point origin = on_paper(axes.seen(pose.move), place);
    const Point3 fibres = axes.seen(turned(pose, {1, 0, 0}));
    if (std::hypot(fibres[0], fibres[1]) < 0.05) return {};
    return along_fibres(hit, origin, {fibres[0], fibres[1]}, over);
}

}  // namespace rodwright::drawing
