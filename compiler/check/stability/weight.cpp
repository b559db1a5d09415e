#include "compiler/check/stability/weight.hpp"

#include <algorithm>

namespace rodwright {

namespace {

struct Content {
    double volume = 0;  // mm^3
    Point3 moment{};    // volume times centre
};

// The tetrahedra from the origin to every triangle, those that face it counted off (the divergence theorem).
// Seen from outside, corners run counter-clockwise.
Content content_of(const Mesh& mesh) {
    Content content;
    for (const Triangle& triangle : mesh) {
        const auto& [a, b, c] = triangle.corners;
        const Point3 cross = {b[1] * c[2] - b[2] * c[1], b[2] * c[0] - b[0] * c[2],
                              b[0] * c[1] - b[1] * c[0]};
        const double volume = (a[0] * cross[0] + a[1] * cross[1] + a[2] * cross[2]) / 6;
        content.volume += volume;
        for (std::size_t i = 0; i < 3; ++i) content.moment[i] += volume * (a[i] + b[i] + c[i]) / 4;
    }
    return content;
}

// Null where its density is not known.
const Wood* wood_of(const Piece& piece, const Kind& kind) {
    const Wood* wood = piece.find_wood(kind.wood);
    return wood != nullptr && wood->density > 0 ? wood : nullptr;
}

}  // namespace

std::vector<PartWeight> part_weights(const Piece& piece, const std::vector<Mesh>& meshes) {
    constexpr double usual_density = 600;  // kg/m^3, between pine and oak
    constexpr double cubic_metre = 1e9;    // mm^3
    std::vector<PartWeight> weights(piece.parts.size());
    for (std::size_t part = 0; part < weights.size(); ++part) {
        const Wood* wood = wood_of(piece, piece[piece.parts[part].kind]);
        const double density = (wood != nullptr ? wood->density.get_d() : usual_density) / cubic_metre;
        const Content content = content_of(meshes[part]);
        weights[part].volume = content.volume;
        weights[part].kilograms = density * content.volume;
        for (std::size_t i = 0; i < 3; ++i) weights[part].moment[i] = density * content.moment[i];
    }
    return weights;
}

Weight weight_of(const Piece& piece, const std::vector<Mesh>& meshes) {
    Weight weight;
    for (const PartWeight& part : part_weights(piece, meshes)) {
        weight.kilograms += part.kilograms;
        for (std::size_t i = 0; i < 3; ++i) weight.centre[i] += part.moment[i];
    }
    for (double& coordinate : weight.centre) coordinate /= std::max(weight.kilograms, 1e-9);
    for (const Kind& kind : piece.kinds) {
        if (wood_of(piece, kind) == nullptr) weight.guessed.push_back(kind.name);
    }
    return weight;
}

}  // namespace rodwright
