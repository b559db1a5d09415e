#include "backends/packet/parts/part_geometry.hpp"

#include <algorithm>
#include <cmath>

namespace rodwright::packet {

using drawing::AxisView;

namespace {

// A shape with more corners than this is a curve: its table row says more than a figure at each corner.
constexpr std::size_t most_corners = 8;

bool has_body(const Feature& feature) {
    return feature.op != FeatureOp::blend && feature.op != FeatureOp::bevel;
}

std::vector<Point2> section_of(const Body& body) {
    if (body.form == BodyForm::prism) return body.profile;
    const Rational u = body.size_u / 2;
    const Rational v = body.size_v / 2;
    return {{-u, -v}, {u, -v}, {u, v}, {-u, v}};
}

void set_along(Vector& point, const Vector& origin, Direction direction, const Rational& distance) {
    if (direction.positive) {
        point[direction.axis] = origin[direction.axis] + distance;
    } else {
        point[direction.axis] = origin[direction.axis] - distance;
    }
}

using Polygon = std::vector<Vector>;

// The part of a polygon on one side of a plane square to an axis (Sutherland and Hodgman's method).
Polygon cut(const Polygon& polygon, Axis axis, const Rational& limit, bool keep_below) {
    const auto inside = [&](const Vector& p) { return keep_below ? p[axis] <= limit : p[axis] >= limit; };
    Polygon kept;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Vector& a = polygon[i];
        const Vector& b = polygon[(i + 1) % polygon.size()];
        if (inside(a)) kept.push_back(a);
        if (inside(a) == inside(b)) continue;
        const Rational part = (limit - a[axis]) / (b[axis] - a[axis]);
        Vector crossing;
        for (const Axis each : all_axes) crossing[each] = a[each] + part * (b[each] - a[each]);
        kept.push_back(std::move(crossing));
    }
    return kept;
}

// Exact where the root is a fraction.
Rational root(const Rational& square) {
    const mpz_class above = square.get_num();
    const mpz_class below = square.get_den();
    if (mpz_perfect_square_p(above.get_mpz_t()) == 0 || mpz_perfect_square_p(below.get_mpz_t()) == 0)
        return from_double(std::sqrt(square.get_d()));
    return Rational(sqrt(above), sqrt(below));
}

// The section's corners within the stock, `sweep` along the body.
Polygon section_at(const Body& body, const Box& stock, const Rational& sweep) {
    Polygon polygon;
    for (const Point2& point : section_of(body)) {
        Vector corner;
        set_along(corner, body.frame.origin, body.frame.u, point.u);
        set_along(corner, body.frame.origin, body.frame.v, point.v);
        set_along(corner, body.frame.origin, body.frame.w, sweep);
        polygon.push_back(std::move(corner));
    }
    for (const Axis axis : {body.frame.u.axis, body.frame.v.axis}) {
        polygon = cut(polygon, axis, stock.low[axis], false);
        polygon = cut(polygon, axis, stock.high[axis], true);
    }
    return polygon;
}

// A hollow's corners are those of the box around its arc.
Polygon hollow_corners(const Hollow& hollow, const Body& body, const Box& stock, const Rational& sweep) {
    const Axis up = hollow.open.axis;
    const Rational edge = hollow.open.positive ? stock.high[up] : stock.low[up];
    const Rational deep = hollow.open.positive ? Rational(edge - hollow.rise) : Rational(edge + hollow.rise);
    Polygon corners;
    for (const Rational& across : {hollow.start, Rational(hollow.start + hollow.chord)}) {
        for (const Rational& along : {edge, deep}) {
            Vector corner;
            set_along(corner, body.frame.origin, body.frame.w, sweep);
            corner[hollow.across] = across;
            corner[up] = along;
            corners.push_back(std::move(corner));
        }
    }
    return corners;
}

// Corners of the body within the stock, both ends of its sweep.
std::vector<Vector> corners_within(const Body& body, const Box& stock) {
    const std::optional<Hollow> hollow = hollow_of(body, stock);
    std::vector<Vector> corners;
    for (const Rational& sweep : {Rational(0), body.length}) {
        Polygon polygon =
            hollow ? hollow_corners(*hollow, body, stock, sweep) : section_at(body, stock, sweep);
        const Axis swept = body.frame.w.axis;
        for (Vector& corner : polygon) {
            corner[swept] = std::clamp(corner[swept], stock.low[swept], stock.high[swept]);
            corners.push_back(std::move(corner));
        }
    }
    return corners;
}

// Openings towards the viewer count more than those that a view from above shows.
int score(const Kind& kind, const AxisView& view) {
    int sum = 0;
    for (const Feature& feature : kind.features) {
        if (feature.op != FeatureOp::remove) continue;
        const Direction opens = open_side(kind, feature);
        if (opens == view.towards) sum += 3;
        if (opens == view.up) sum += 2;
    }
    return sum;
}

}  // namespace

Box overall_box(const Kind& kind) {
    Box box;
    for (const Axis axis : all_axes) {
        const Extent& extend = kind.extend[static_cast<std::size_t>(axis)];
        box.low[axis] = -extend.low;
        box.high[axis] = kind.size[axis] + extend.high;
    }
    return box;
}

Box visible_box(const Kind& kind) {
    return {{}, kind.size};
}

std::vector<Vector> section_within(const Body& body, const Box& stock) {
    return section_at(body, stock, 0);
}

std::optional<Hollow> hollow_of(const Body& body, const Box& stock) {
    if (body.form != BodyForm::cylinder) return std::nullopt;
    const Rational radius = body.size_u / 2;
    for (const Axis axis : {body.frame.u.axis, body.frame.v.axis}) {
        const Axis across = axis == body.frame.u.axis ? body.frame.v.axis : body.frame.u.axis;
        const Rational& centre = body.frame.origin[axis];
        for (const bool positive : {false, true}) {
            const Rational outside =
                positive ? Rational(centre - stock.high[axis]) : Rational(stock.low[axis] - centre);
            if (outside <= 0 || outside >= radius) continue;
            const Rational half = root(radius * radius - outside * outside);
            return Hollow{{axis, positive},
                          across,
                          Rational(body.frame.origin[across] - half),
                          Rational(2 * half),
                          Rational(radius - outside)};
        }
    }
    return std::nullopt;
}

std::vector<Rational> marks_of(const Body& body, const Box& stock, Axis axis) {
    std::vector<Rational> marks;
    if (body.form == BodyForm::cylinder && axis != body.frame.w.axis && !hollow_of(body, stock)) {
        marks.push_back(body.frame.origin[axis]);
        return marks;
    }
    for (const Vector& corner : corners_within(body, stock)) marks.push_back(corner[axis]);
    std::sort(marks.begin(), marks.end());
    marks.erase(std::unique(marks.begin(), marks.end()), marks.end());
    if (marks.size() > most_corners) marks.clear();
    return marks;
}

Direction open_side(const Kind& kind, const Feature& feature) {
    const Box visible = visible_box(kind);
    const Box extent = extent_within(feature.body, overall_box(kind)).value_or(visible);
    const bool leave = feature.op == FeatureOp::leave;
    const auto reaches = [&](Direction side) {
        const Rational past = side.positive ? Rational(extent.high[side.axis] - visible.high[side.axis])
                                            : Rational(visible.low[side.axis] - extent.low[side.axis]);
        return leave ? past > 0 : past >= 0;
    };
    const Direction own = leave ? feature.body.frame.w : -feature.body.frame.w;
    if (reaches(own) && !reaches(-own)) return own;
    for (const Axis axis : {Axis::deep, Axis::tall, Axis::wide}) {
        for (const bool positive : {false, true}) {
            const Direction side{axis, positive};
            if (reaches(side) && !reaches(-side)) return side;
        }
    }
    return own;
}

AxisView lying(const Kind& kind) {
    const Direction width{Axis::deep, true};
    const Direction thickness{Axis::tall, true};
    std::vector<AxisView> ways = {drawing::axis_view(thickness, width),
                                  drawing::axis_view(-thickness, -width)};
    if (kind.size[Axis::deep] == kind.size[Axis::tall]) {
        ways.push_back(drawing::axis_view(width, -thickness));
        ways.push_back(drawing::axis_view(-width, thickness));
    }
    return *std::max_element(ways.begin(), ways.end(), [&](const AxisView& a, const AxisView& b) {
        return score(kind, a) < score(kind, b);
    });
}

std::optional<Box> extent_within(const Body& body, const Box& stock) {
    const std::vector<Vector> corners = corners_within(body, stock);
    if (corners.empty()) return std::nullopt;
    Box box{corners[0], corners[0]};
    for (const Vector& corner : corners) {
        for (const Axis axis : all_axes) {
            box.low[axis] = std::min(box.low[axis], corner[axis]);
            box.high[axis] = std::max(box.high[axis], corner[axis]);
        }
    }
    for (const Axis axis : all_axes) {
        if (box.low[axis] == box.high[axis]) return std::nullopt;
    }
    return box;
}

Rational distance_along(const Kind& kind, Direction along, const Rational& coordinate) {
    if (along.positive) return coordinate;
    return kind.size[along.axis] - coordinate;
}

namespace {

std::vector<Rational> places_along(const Kind& kind, Direction along, bool only_starts) {
    const Box stock = overall_box(kind);
    std::vector<Rational> found;
    for (const Feature& feature : kind.features) {
        if (!has_body(feature)) continue;
        std::vector<Rational> places;
        for (const Rational& mark : marks_of(feature.body, stock, along.axis))
            places.push_back(distance_along(kind, along, mark));
        std::sort(places.begin(), places.end());
        if (only_starts && places.size() > 1) places.resize(1);
        for (const Rational& place : places) {
            if (place > 0 && place < kind.size[along.axis]) found.push_back(place);
        }
    }
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
}

}  // namespace

std::vector<Rational> stations(const Kind& kind, Direction along) {
    return places_along(kind, along, false);
}

std::vector<Rational> starts(const Kind& kind, Direction along) {
    return places_along(kind, along, true);
}

}  // namespace rodwright::packet
