#include "compiler/assembly/placed_meshes.hpp"

#include "compiler/at_once.hpp"
#include "compiler/solid/pose.hpp"

namespace rodwright {

namespace {

Triangle placed(const Pose& pose, Triangle triangle) {
    for (Point3& corner : triangle.corners) corner = posed(pose, corner);
    triangle.normal = turned(pose, triangle.normal);
    return triangle;
}

}  // namespace

std::vector<Mesh> placed_meshes(const Piece& piece, SolidStore& solids) {
    std::vector<Mesh> meshes(piece.parts.size());
    const SolidKernel* kernel = solids.kernel();
    if (kernel == nullptr) return meshes;
    std::vector<Mesh> kinds(piece.kinds.size());
    for (std::size_t i = 0; i < kinds.size(); ++i) solids.solid(static_cast<KindId>(i));
    at_once(kinds.size(), [&](std::size_t i) {
        const SolidRef solid = solids.solid(static_cast<KindId>(i));
        if (solid) kinds[i] = kernel->triangles(*solid, mesh_tolerance);
    });
    for (std::size_t i = 0; i < meshes.size(); ++i) {
        const Pose pose = pose_of(piece.parts[i].placement);
        for (const Triangle& triangle : kinds[static_cast<std::size_t>(piece.parts[i].kind)])
            meshes[i].push_back(placed(pose, triangle));
    }
    return meshes;
}

}  // namespace rodwright
