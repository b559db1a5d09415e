// The handbook's closed form for single beams, shear deflection included: Wood Handbook, FPL-GTR-282 (2021),
// equation 9-2 and table 9-1. A check on what the frame says of shelves and slats. Newtons, millimetres, MPa.
#pragma once

#include <optional>

#include "compiler/check/strength/load_cases.hpp"

namespace rodwright::strength {

enum class Ends { resting, held_fast };

struct SimpleBeam {
    double length = 0;
    double width = 0;
    double depth = 0;
    double modulus = 0;  // E_L
    double shear = 0;    // G
};

// kb W L^3 / (E I) + ks W L / (G A'), I = b h^3 / 12, A' = 5 b h / 6, at midspan; the load spread evenly, or
// in the middle.
double handbook_sag(const SimpleBeam& beam, double load, bool spread, Ends ends);

// What a straight column carries along the grain, N: Ylinen's curve between crushing and Euler's load,
// FPL-GTR-282 equations 9-25 to 9-28; `curve` is its c, 0.8 for sawn wood. `length` is that between hinges.
struct Column {
    double length = 0;
    double area = 0;
    double inertia = 0;  // the least
    double modulus = 0;  // E_L
    double crushing = 0;

    double slenderness() const;  // L / r
};
double column_strength(const Column& column, double curve);

struct SagBounds {
    double held_fast = 0;
    double resting = 0;
};

// For a part that joints hold by its ends alone, with a load all along it or one weight in its middle; empty
// for any other.
std::optional<SagBounds> bounds_of(const Piece& piece, const PartModel& part, const Case& loads);

}  // namespace rodwright::strength
