// Stiffness of single elements. Private to compiler/check/frame/.
#pragma once

#include "compiler/check/frame/model.hpp"

namespace rodwright::frame {

using Mat12 = Eigen::Matrix<double, 12, 12>;
using Vec12 = Eigen::Matrix<double, 12, 1>;

// A beam where it stands: its length, its axes as rows, and the way from the motions of its nodes to those of
// its ends in its own axes.
struct PlacedBeam {
    double length = 0;
    Mat3 rows = Mat3::Identity();
    Mat12 to_local = Mat12::Zero();
};

// `usable` is false where the beam has no length or `across` runs along it.
PlacedBeam place_beam(const Model& model, const Beam& beam, bool& usable);

// In the beam's own axes, with shear deflection.
Mat12 beam_stiffness(const Beam& beam, double length);

// What the nodes put on the ends of a beam with fixed ends under a uniform load, in the beam's own axes.
Vec12 held_ends(const Vec3& per_length, double length);

// The motion of the spring's second end against its first, in its axes, from the twelve motions of its nodes.
Eigen::Matrix<double, 6, 12> spring_motion(const Model& model, const Spring& spring);

}  // namespace rodwright::frame
