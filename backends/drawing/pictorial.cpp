#include "backends/drawing/pictorial.hpp"

#include <algorithm>
#include <cmath>

#include "backends/drawing/curve.hpp"
#include "backends/drawing/grain.hpp"

namespace rodwright::drawing {

namespace {

// How much of the wood's own colour shows; the rest is paper, so that lines stand out and ink is saved.
constexpr double own_colour = 0.62;

// Tone of a face by its outward normal in the view: 1 is full light. Chosen so that the three faces of a box
// in an isometric view differ also in black and white.
double tone_of(const Point3& normal) {
    constexpr Point3 light = {-0.35, 0.85, 0.4};
    const double shine = normal[0] * light[0] + normal[1] * light[1] + normal[2] * light[2];
    return std::clamp(0.84 + 0.2 * shine, 0.55, 1.0);
}

std::uint8_t mixed(std::uint8_t own, double tone) {
    const double full = 255 - own_colour * (255 - own);
    return static_cast<std::uint8_t>(std::clamp(std::lround(full * tone), 0L, 255L));
}

Colour colour_at(const Hit& hit, const ViewAxes& axes) {
    if (hit.part == nullptr) return white;
    return shade(hit.part->colour, axes.seen(turned(hit.part->pose, hit.triangle->normal)));
}

// A little to the left of a line that runs that way.
Point aside_of(Point along) {
    constexpr double aside = 0.12;  // mm
    const double length = std::max(std::hypot(along.x, along.y), 1e-9);
    return Point{-along.y, along.x} * (aside / length);
}

class Picture {
  public:
    Picture(const std::vector<ShadedPart>& parts, const View& from, const ViewPlace& place,
            const std::vector<Segment>& broken)
        : scene_(parts, from), place_(place), broken_(broken) {}

    void add_line(const ViewLine& line) {
        if (!line.visible || line.line_class == LineClass::seam) return;
        const bool broken = runs_along(line, broken_);
        lines_.push_back({drawn_line(line, place_, broken ? LineRole::broken : LineRole::crease),
                          line.line_class, line.tag, broken});
    }

    // All faces before any line: a face next to a line would cover half of it. Where wood is broken off last:
    // what it takes away goes with the lines on it.
    void draw(Sheet& sheet, const PartLabel& label) {
        std::vector<Polyline> borders;
        for (const Edge& edge : lines_) borders.push_back(points_along(edge.item));
        constexpr double grid = 0.01;  // mm
        for (const Region& region : regions_between(borders, grid)) paint(region);
        add_by_part(sheet, std::move(drawn_), label);
        drawn_.clear();
        for (const Edge& edge : lines_) {
            if (!edge.broken) ink(edge);
        }
        for (const Edge& edge : lines_) {
            if (edge.broken) ink_broken(edge);
        }
        add_by_part(sheet, std::move(drawn_), label);
    }

  private:
    struct Edge {
        Item item;
        LineClass line_class{};
        std::uint32_t tag = 0;
        bool broken = false;
    };

    Hit hit_at(Point on_sheet) const { return scene_.at(place_.on_model(on_sheet)); }

    void paint(const Region& region) {
        const Hit hit = hit_at(region.inside);
        const std::uint32_t tag = hit.part == nullptr ? no_part : hit.part->tag;
        drawn_.push_back({tag, Fill{colour_at(hit, scene_.axes()), region.outline}});
        constexpr double least_area = 4;  // mm^2: strokes in less are specks
        if (hit.part == nullptr || region.area < least_area) return;
        const Rect over = *extent_of(Fill{white, region.outline});
        for (Polyline& stroke : clipped(grain_strokes(hit, scene_.axes(), place_, over), region))
            drawn_.push_back({tag, Stroke{LineRole::grain, std::move(stroke)}});
    }

    // The weight of a line at one of its points, by what is seen on both sides of it.
    LineRole role_at(const Edge& edge, Point at, Point along) const {
        const Point across = aside_of(along);
        const ShadedPart* left = hit_at(at + across).part;
        const ShadedPart* right = hit_at(at - across).part;
        if (left == nullptr || right == nullptr) return LineRole::silhouette;
        if (left != right) return LineRole::contour;
        return edge.line_class == LineClass::smooth ? LineRole::smooth : LineRole::crease;
    }

    void ink(const Edge& edge) {
        const auto* stroke = std::get_if<Stroke>(&edge.item);
        if (stroke != nullptr && stroke->points.size() == 2) {
            ink_straight(edge, stroke->points[0], stroke->points[1]);
            return;
        }
        const Polyline points = points_along(edge.item);
        const std::size_t middle = points.size() / 2;
        const LineRole role = role_at(edge, points[middle], points[middle] - points[middle - 1]);
        Item inked = edge.item;
        if (auto* arc = std::get_if<Arc>(&inked)) {
            arc->role = role;
        } else {
            std::get<Stroke>(inked).role = role;
        }
        drawn_.push_back({edge.tag, std::move(inked)});
    }

    bool is_of(const Hit& hit, const Edge& edge) const {
        return hit.part != nullptr && hit.part->tag == edge.tag;
    }

    // Freehand on the side of the wood; what is seen beside it reaches as far.
    void ink_broken(const Edge& edge) {
        const auto* stroke = std::get_if<Stroke>(&edge.item);
        if (stroke == nullptr || stroke->points.size() != 2) {
            drawn_.push_back({edge.tag, edge.item});
            return;
        }
        Point from = stroke->points[0];
        Point to = stroke->points[1];
        const Point middle = (from + to) * 0.5;
        if (!is_of(hit_at(middle + aside_of(to - from)), edge)) std::swap(from, to);
        const Freehand line = freehand(from, to);
        fill_beside(edge, line);
        drawn_.push_back({edge.tag, Stroke{LineRole::broken, line.drawn, false, true}});
    }

    // Between the straight edge and the freehand line, in the colours of what lies on the other side. A
    // little over the edge, so that no trace of it is left.
    void fill_beside(const Edge& edge, const Freehand& line) {
        const std::size_t count = line.drawn.size();
        const Point outwards = aside_of(line.straight.back() - line.straight.front()) * -1;
        const auto colour = [&](std::size_t i) {
            const Point middle = (line.straight[i] + line.straight[i + 1]) * 0.5;
            return colour_at(hit_at(middle + outwards), scene_.axes());
        };
        for (std::size_t first = 0; first + 1 < count;) {
            Fill fill{colour(first), {line.drawn[first]}};
            std::size_t last = first;
            while (last + 1 < count && colour(last) == fill.colour) fill.points.push_back(line.drawn[++last]);
            for (std::size_t i = last + 1; i-- > first;)
                fill.points.push_back(line.straight[i] + outwards * 0.5);
            drawn_.push_back({edge.tag, std::move(fill)});
            first = last;
        }
    }

    // What lies behind a long edge changes along it: its weight too.
    void ink_straight(const Edge& edge, Point from, Point to) {
        constexpr double step = 1.5;  // mm
        const Point way = to - from;
        const int count = std::max(1, static_cast<int>(std::hypot(way.x, way.y) / step));
        const auto at = [&](double part) { return from + way * (part / count); };
        int first = 0;
        LineRole role = role_at(edge, at(0.5), way);
        for (int i = 1; i <= count; ++i) {
            const LineRole next = i == count ? role : role_at(edge, at(i + 0.5), way);
            if (i < count && next == role) continue;
            drawn_.push_back({edge.tag, Stroke{role, {at(first), at(i)}}});
            first = i;
            role = next;
        }
    }

    Scene scene_;
    ViewPlace place_;
    const std::vector<Segment>& broken_;
    std::vector<Edge> lines_;
    std::vector<TaggedItem> drawn_;
};

}  // namespace

Colour shade(const Colour& wood, const Point3& normal) {
    const double tone = tone_of(normal);
    return {mixed(wood.red, tone), mixed(wood.green, tone), mixed(wood.blue, tone)};
}

void draw_pictorial_view(Sheet& sheet, const Projected& view, const std::vector<ShadedPart>& parts,
                         const View& from, const ViewPlace& place, const PartLabel& label,
                         const std::vector<Segment>& broken) {
    Picture picture(parts, from, place, broken);
    for (const ViewLine& line : view.lines) picture.add_line(line);
    picture.draw(sheet, label);
}

}  // namespace rodwright::drawing
