#include "compiler/check/strength/sections.hpp"

#include <algorithm>

#include "compiler/check/strength/placed.hpp"

namespace rodwright::strength {

namespace {

constexpr double inside = 0.05;  // mm from an end, where its faces and edges do not meddle

Point3 own(const PlacedPart& part, const Point3& point) {
    const Vec3 moved = part.to_own(Vec3(point[0], point[1], point[2]));
    return {moved.x(), moved.y(), moved.z()};
}

// A part's surface in its kind's frame.
Mesh surface_of(const PlacedPart& part, const Mesh& placed) {
    Mesh surface = placed;
    for (Triangle& triangle : surface) {
        for (Point3& corner : triangle.corners) corner = own(part, corner);
        const Vec3 normal =
            part.axes.transpose() * Vec3(triangle.normal[0], triangle.normal[1], triangle.normal[2]);
        triangle.normal = {normal.x(), normal.y(), normal.z()};
    }
    return surface;
}

// The middle of a body along the kind's x.
double middle_of(const Body& body) {
    const auto along = [](Direction direction, double size) {
        return direction.axis == Axis::wide ? (direction.positive ? size : -size) : 0.0;
    };
    return body.frame.origin[Axis::wide].get_d() + along(body.frame.w, body.length.get_d() / 2);
}

}  // namespace

Sections::Sections(const Piece& piece, const std::vector<Mesh>& meshes)
    : piece_(piece), surfaces_(piece.kinds.size()), pockets_(piece.kinds.size()) {
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        const Kind& kind = piece.kinds[i];
        const PartId first = kind.parts.front();
        const auto part = static_cast<std::size_t>(first);
        if (part < meshes.size()) surfaces_[i] = surface_of(placed_part(piece, first), meshes[part]);
        for (const Feature& feature : kind.features) {
            if (feature.op == FeatureOp::remove) pockets_[i].push_back(middle_of(feature.body));
        }
        std::ranges::sort(pockets_[i]);
        pockets_[i].erase(std::unique(pockets_[i].begin(), pockets_[i].end()), pockets_[i].end());
    }
}

const CrossSection& Sections::at(KindId kind, double x) {
    const auto key = std::make_pair(kind, x);
    if (const auto found = known_.find(key); found != known_.end()) return found->second;
    const Vector& size = piece_[kind].size;
    const double length = size[Axis::wide].get_d();
    const double clear = std::clamp(x, std::min(inside, length / 2), std::max(length - inside, length / 2));
    std::optional<CrossSection> section = cut_across(surfaces_[static_cast<std::size_t>(kind)], clear);
    if (!section) section = rectangle(size[Axis::deep].get_d(), size[Axis::tall].get_d());
    return known_.emplace(key, std::move(*section)).first->second;
}

}  // namespace rodwright::strength
