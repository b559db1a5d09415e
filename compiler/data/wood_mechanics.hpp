// Stiffness and strength of a species: means of small clear specimens at 12 % moisture, not design values.
#pragma once

namespace rodwright {

// Megapascals and plain ratios. L is along the grain, R and T across it.
struct WoodMechanics {
    double modulus = 0;        // modulus of elasticity in bending, as tested: shear deflection is in it
    double rupture = 0;        // modulus of rupture
    double shear = 0;          // shear strength along the grain
    double crushing = 0;       // compression strength along the grain
    double across = 0;         // E across the grain / E_L, mean of R and T
    double shear_modulus = 0;  // G / E_L, mean of LR and LT
    double gravity = 0;        // specific gravity, ovendry weight on volume at 12 %
};

}  // namespace rodwright
