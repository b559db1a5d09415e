#include "compiler/assembly/assembly_facts.hpp"

#include <algorithm>

#include "compiler/assembly/placed_meshes.hpp"
#include "compiler/limits.hpp"

namespace rodwright {

static bool has_dowels(const Joint& joint) {
    return std::ranges::any_of(joint.fasteners,
                               [](const Fastener& each) { return each.form == FastenerForm::dowel; });
}

Blocking blocking_of(const Piece& piece, const std::vector<Mesh>& surfaces) {
    Blocking blocking(surfaces);
    for (const Joint& joint : piece.joints) {
        if (!has_dowels(joint)) continue;
        const auto first = static_cast<std::size_t>(joint.members[0].part);
        const auto second = static_cast<std::size_t>(joint.members[1].part);
        for (const Direction way : all_ways) {
            if (way.axis != joint.frame.w.axis) blocking.close(first, second, way);
        }
    }
    return blocking;
}

std::optional<AssemblyFacts> assembly_facts(const Piece& piece, SolidStore& solids) {
    if (piece.parts.empty() || piece.parts.size() > limits::tried_parts) return std::nullopt;
    if (solids.placed().size() != piece.parts.size()) return std::nullopt;
    std::vector<Mesh> surfaces = placed_meshes(piece, solids);
    Blocking blocking = blocking_of(piece, surfaces);
    TakenApart apart = take_apart(blocking);
    return AssemblyFacts{std::move(surfaces), std::move(blocking), std::move(apart)};
}

}  // namespace rodwright
