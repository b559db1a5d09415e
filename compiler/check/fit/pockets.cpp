#include "compiler/check/fit/pockets.hpp"

#include <algorithm>

#include "compiler/check/fit/rays.hpp"
#include "compiler/graph/isometry.hpp"

namespace rodwright {

namespace {

constexpr double slack = 1e-3;    // mm
constexpr double outside = 0.01;  // mm: where rays begin, beside a pocket

Bounds bounds_in_mm(const Box& box) {
    return {point3_of(box.low), point3_of(box.high)};
}

double opening(const Pocket& pocket, Face face) {
    double area = 1;
    for (const Axis axis : all_axes) {
        if (axis != axis_of(face)) area *= pocket.size(axis);
    }
    return area;
}

// Cut to the visible body, with the faces where it reaches that. False if nothing is left or it comes out
// nowhere.
bool set_openings(Pocket& pocket, const Bounds& body) {
    bool any = false;
    for (const Face face : all_faces) {
        const auto i = static_cast<std::size_t>(axis_of(face));
        double& end = is_far(face) ? pocket.box.high[i] : pocket.box.low[i];
        const double limit = is_far(face) ? body.high[i] : body.low[i];
        const double beyond = is_far(face) ? end - limit : limit - end;
        pocket.open[static_cast<std::size_t>(face)] = beyond > -slack;
        if (beyond > 0) end = limit;
    }
    for (const Axis axis : all_axes) {
        if (pocket.size(axis) <= slack) return false;
    }
    for (const Face face : all_faces) {
        if (!pocket.open[static_cast<std::size_t>(face)]) continue;
        if (!any || opening(pocket, face) > opening(pocket, pocket.entry)) pocket.entry = face;
        any = true;
    }
    return any;
}

// Points just outside of a side of the pocket, spread over it, off its edges and off the lines of symmetry.
std::vector<Point3> points_beside(const Pocket& pocket, Face side) {
    constexpr std::array<double, 3> spread = {0.113, 0.487, 0.871};
    const auto axis = static_cast<std::size_t>(axis_of(side));
    const std::size_t u = (axis + 1) % 3;
    const std::size_t v = (axis + 2) % 3;
    std::vector<Point3> points;
    for (const double along_u : spread) {
        for (const double along_v : spread) {
            Point3 point;
            point[axis] = is_far(side) ? pocket.box.high[axis] + outside : pocket.box.low[axis] - outside;
            point[u] = pocket.box.low[u] + along_u * (pocket.box.high[u] - pocket.box.low[u]);
            point[v] = pocket.box.low[v] + along_v * (pocket.box.high[v] - pocket.box.low[v]);
            points.push_back(point);
        }
    }
    return points;
}

const Pocket* pocket_at(const std::vector<Pocket>& pockets, const Pocket& own, const Point3& point) {
    for (const Pocket& pocket : pockets) {
        if (&pocket != &own && pocket.holds(point)) return &pocket;
    }
    return nullptr;
}

Point3 moved(Point3 point, Direction way, double by) {
    point[static_cast<std::size_t>(way.axis)] += way.positive ? by : -by;
    return point;
}

std::optional<Wall> wall_at(const std::vector<Pocket>& pockets, const Rays& rays, const Pocket& pocket,
                            Face side, const Point3& point) {
    const std::optional<double> ahead = rays.wood_ahead(point);
    constexpr double into = 0.05;  // mm
    const Pocket* beyond =
        pocket_at(pockets, pocket, ahead ? moved(point, outward(side), *ahead + into) : point);
    const bool meant =
        beyond != nullptr && (beyond->entry == pocket.entry || same_work(*beyond->feature, *pocket.feature));
    if (!ahead && meant) return std::nullopt;
    return Wall{&pocket, side, ahead ? *ahead + outside : 0, beyond};
}

}  // namespace

bool same_work(const Feature& a, const Feature& b) {
    return a.joint == b.joint && a.where == b.where && a.made_by == b.made_by;
}

bool Pocket::holds(const Point3& point) const {
    for (std::size_t i = 0; i < 3; ++i) {
        if (point[i] < box.low[i] - slack || point[i] > box.high[i] + slack) return false;
    }
    return true;
}

std::vector<Pocket> pockets_of(const Piece& piece, const Part& part) {
    const Isometry to_piece{part.placement.turn, part.placement.move};
    const Bounds body = bounds_in_mm(part.body);
    std::vector<Pocket> pockets;
    for (const Feature& feature : piece[part.kind].features) {
        if (feature.op != FeatureOp::remove) continue;
        Pocket pocket{&feature, bounds_in_mm(bounds_of(to_piece.apply(feature.body))), {}, {}};
        if (set_openings(pocket, body)) pockets.push_back(pocket);
    }
    return pockets;
}

std::vector<Wall> walls_of(const std::vector<Pocket>& pockets, const Mesh& mesh) {
    std::vector<Wall> walls;
    for (const Pocket& pocket : pockets) {
        for (const Face side : all_faces) {
            if (pocket.open[static_cast<std::size_t>(side)]) continue;
            const Rays rays(mesh, outward(side), pocket.box);
            std::optional<Wall> least;
            for (const Point3& point : points_beside(pocket, side)) {
                const auto wall = wall_at(pockets, rays, pocket, side, point);
                if (wall && (!least || wall->thick < least->thick)) least = wall;
            }
            if (least) walls.push_back(*least);
        }
    }
    return walls;
}

}  // namespace rodwright
