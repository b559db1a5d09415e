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
    const double tone = tone_of(axes.seen(turned(hit.part->pose, hit.triangle->normal)));
    const Colour& own = hit.part->colour;
    return {mixed(own.red, tone), mixed(own.green, tone), mixed(own.blue, tone)};
}

class Picture {
  public:
    Picture(const std::vector<ShadedPart>& parts, const View& from, const ViewPlace& place)
        : scene_(parts, from), place_(place) {}

    void add_line(const ViewLine& line) {
        if (!line.visible || line.line_class == LineClass::seam) return;
        lines_.push_back({drawn_line(line, place_, LineRole::crease), line.line_class, line.tag});
    }

    // All faces before any line: a face next to a line would cover half of it.
    void draw(Sheet& sheet, const PartLabel& label) {
        std::vector<Polyline> borders;
        for (const Edge& edge : lines_) borders.push_back(points_along(edge.item));
        constexpr double grid = 0.01;  // mm
        for (const Region& region : regions_between(borders, grid)) paint(region);
        add_by_part(sheet, std::move(drawn_), label);
        drawn_.clear();
        for (const Edge& edge : lines_) ink(edge);
        add_by_part(sheet, std::move(drawn_), label);
    }

  private:
    struct Edge {
        Item item;
        LineClass line_class{};
        std::uint32_t tag = 0;
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
        constexpr double aside = 0.12;  // mm
        const double length = std::max(std::hypot(along.x, along.y), 1e-9);
        const Point across = Point{-along.y, along.x} * (aside / length);
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
    std::vector<Edge> lines_;
    std::vector<TaggedItem> drawn_;
};

}  // namespace

void draw_pictorial_view(Sheet& sheet, const Projected& view, const std::vector<ShadedPart>& parts,
                         const View& from, const ViewPlace& place, const PartLabel& label) {
    Picture picture(parts, from, place);
    for (const ViewLine& line : view.lines) picture.add_line(line);
    picture.draw(sheet, label);
}

}  // namespace rodwright::drawing
