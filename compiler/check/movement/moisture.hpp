// How moist wood gets in air.
#pragma once

#include "compiler/graph/piece.hpp"

namespace rodwright {

// Equilibrium moisture content in percent, for air of that temperature (kelvin) and relative humidity (0 to
// 1, below 1): Wood Handbook, FPL-GTR-282, equation 4-5.
double equilibrium_moisture(double kelvin, double humidity);

// Moisture contents of the wood, percent.
struct Seasons {
    double made = 0;
    double driest = 0;
    double dampest = 0;

    double rise() const { return dampest > made ? dampest - made : 0; }
    double fall() const { return made > driest ? made - driest : 0; }
};
Seasons seasons_of(const Climate& climate);

}  // namespace rodwright
