// What holds a joint, as small elastic contacts: glued and bearing faces, dowels, screws. Closed forms from
// the sizes that the joint's definition leaves, removes and holds; no joint is known by name.
//
//   A glued face gives by the shear of half a tongue's thickness of wood on either side; its strength is the
//   shear strength of the weaker wood (Wood Handbook, chapter 10: glue that is well made is as strong as the
//   wood), where the grain of both parts runs along the face, and a share of it on end grain. The elastic
//   distribution over the face is that of Smardzewski, Furniture Design (2015): stress grows with the
//   distance from the centre of turning. A bearing face gives by the squeeze of the wood behind it. Screws:
//   withdrawal by equation 8-10 of the handbook, side loads by 8-13 and table 8-4. Dowels: published bond
//   stress on the area around them; side loads by the bearing strength of equation 8-3.
#pragma once

#include <vector>

#include "compiler/check/strength/placed.hpp"
#include "compiler/check/strength/strength_data.hpp"

namespace rodwright::strength {

enum class BondKind { glue, end_grain_glue, bearing, dowel, screw, clip };

// A rectangle (`half` is zero across it) or a point, in the axes of the joint's frame. Stiffness and strength
// along u, v and w are those of the whole bond, N/mm and N; no strength (infinity) where nothing is judged.
struct Bond {
    BondKind kind{};
    Vec3 centre = Vec3::Zero();
    Vec3 half = Vec3::Zero();
    Vec3 stiffness = Vec3::Zero();
    Vec3 strength = Vec3::Zero();
    bool one_way = false;  // presses along w, and lets go
};

// The wood that stands out of one part into the other, at its root.
struct Tongue {
    Box3 box;            // in the joint's own axes
    double rupture = 0;  // of its wood, MPa
};

struct Bonds {
    std::vector<Bond> bonds;
    std::vector<Tongue> tongues;
};

// Empty if the wood of a member is not known.
std::optional<Bonds> bonds_of(const Piece& piece, const Joint& joint, const Rules& rules);

// Withdrawal of a wood screw from side grain, N: handbook equation 8-10. `gravity` at 12 %, millimetres.
double screw_withdrawal(double gravity, double diameter, double thread);
// The side load of a wood screw at the proportional limit, N: handbook equation 8-13 with K of table 8-4; the
// group of hardwoods, which is the lower one where both have it.
double screw_side_load(double gravity, double diameter);
// Bearing strength of wood under a dowel, MPa: handbook equation 8-3.
double dowel_bearing(double gravity);

}  // namespace rodwright::strength
