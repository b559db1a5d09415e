#include "compiler/at_once.hpp"
#include "compiler/solid/remembering_kernel.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

Point3 point3_of(const Vector& vector) {
    return {vector.at[0].get_d(), vector.at[1].get_d(), vector.at[2].get_d()};
}

Pose pose_of(const Placement& placement) {
    Pose pose;
    for (const Axis axis : all_axes) {
        Vector unit;
        unit[axis] = 1;
        pose.columns[static_cast<std::size_t>(axis)] = point3_of(placement.turn.apply(unit));
    }
    pose.move = point3_of(placement.move);
    return pose;
}

SolidStore::SolidStore(const Piece& piece, Diagnostics& diagnostics)
    : piece_(piece), diagnostics_(diagnostics), solids_(piece.kinds.size()) {}

const SolidKernel* SolidStore::kernel() {
    if (kernel_tried_) return kernel_.get();
    kernel_tried_ = true;
    std::string error;
    if (const SolidKernel* loaded = load_solid_kernel(error)) {
        kernel_ = remembering(*loaded);
    } else {
        diagnostics_.add(
            diagnose(Code::no_solid_kernel, Span{}, "the solid kernel cannot be loaded: " + error)
                .hint("install rodwright again; the cut list and the steps can be written without it"));
    }
    return kernel_.get();
}

void SolidStore::build_all() {
    if (built_) return;
    built_ = true;
    if (kernel() == nullptr) return;
    std::vector<Diagnostics> found(solids_.size());
    at_once(solids_.size(),
            [&](std::size_t i) { solids_[i] = kernel_->build(piece_, piece_.kinds[i], found[i]); });
    for (const Diagnostics& of_kind : found) {
        for (const Diagnostic& each : of_kind.list()) diagnostics_.add(each);
    }
}

SolidRef SolidStore::solid(KindId kind) {
    build_all();
    const auto index = static_cast<std::size_t>(kind);
    return index < solids_.size() ? solids_[index] : nullptr;
}

std::vector<PlacedSolid> SolidStore::placed() {
    std::vector<PlacedSolid> placed;
    placed.reserve(piece_.parts.size());
    for (std::size_t i = 0; i < piece_.parts.size(); ++i) {
        const Part& part = piece_.parts[i];
        const SolidRef made = solid(part.kind);
        if (made) placed.push_back({made, pose_of(part.placement), static_cast<std::uint32_t>(i)});
    }
    return placed;
}

}  // namespace rodwright
