// What the piece weighs, and where its weight acts.
#pragma once

#include <string>
#include <vector>

#include "compiler/graph/piece.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

struct Weight {
    double kilograms = 0;
    Point3 centre{};                   // of gravity, in the piece's axes, mm
    std::vector<std::string> guessed;  // parts whose wood, and so its density, is not known
};

// From the volumes of the solids and the densities of the woods at 12 % moisture; 600 kg/m^3 where there is
// none.
Weight weight_of(const Piece& piece, SolidStore& solids);

}  // namespace rodwright
