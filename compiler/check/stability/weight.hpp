// What the piece weighs, and where its weight acts.
#pragma once

#include <string>
#include <vector>

#include "compiler/assembly/blocking.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright {

inline constexpr double standard_gravity = 9.80665;  // m/s^2, by definition

struct PartWeight {
    double volume = 0;  // mm^3
    double kilograms = 0;
    Point3 moment{};  // kilograms times centre
};

// By part.
std::vector<PartWeight> part_weights(const Piece& piece, const std::vector<Mesh>& meshes);

struct Weight {
    double kilograms = 0;
    Point3 centre{};                   // of gravity, in the piece's axes, mm
    std::vector<std::string> guessed;  // kinds whose wood, and so its density, is not known
};

// From the surfaces of all parts and the densities of the woods at 12 % moisture; 600 kg/m^3 where there is
// none.
Weight weight_of(const Piece& piece, const std::vector<Mesh>& meshes);

}  // namespace rodwright
