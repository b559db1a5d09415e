#include "compiler/check/stability/weight.hpp"

#include <algorithm>

#include "compiler/solid/pose.hpp"

namespace rodwright {

Weight weight_of(const Piece& piece, SolidStore& solids) {
    constexpr double usual_density = 600;  // kg/m^3, between pine and oak
    constexpr double cubic_metre = 1e9;    // mm^3
    Weight weight;
    const SolidKernel* kernel = solids.kernel();
    if (kernel == nullptr) return weight;
    for (std::size_t i = 0; i < piece.kinds.size(); ++i) {
        const Kind& kind = piece.kinds[i];
        const SolidRef solid = solids.solid(static_cast<KindId>(i));
        if (!solid) continue;
        const Wood* wood = piece.find_wood(kind.wood);
        const bool known = wood != nullptr && wood->density > 0;
        if (!known) weight.guessed.push_back(kind.name);
        const double mass =
            kernel->volume(*solid) / cubic_metre * (known ? wood->density.get_d() : usual_density);
        const Point3 middle = kernel->centre_of_mass(*solid);
        for (const PartId part : kind.parts) {
            const Point3 at = posed(pose_of(piece[part].placement), middle);
            for (std::size_t axis = 0; axis < 3; ++axis) weight.centre[axis] += mass * at[axis];
            weight.kilograms += mass;
        }
    }
    for (double& coordinate : weight.centre) coordinate /= std::max(weight.kilograms, 1e-9);
    return weight;
}

}  // namespace rodwright
