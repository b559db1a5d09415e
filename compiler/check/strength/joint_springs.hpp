// A joint's bonds as springs of the frame: one, or several along a meeting that is long.
#pragma once

#include "compiler/check/strength/structure.hpp"

namespace rodwright::strength {

// In the joint's axes, moved so that the origin of each spring is the middle of its stretch.
std::vector<JointSpring> joint_springs(const Piece& piece, std::size_t joint, const Bonds& bonds);

// Stiffness of the spring about its origin, in the piece's axes.
frame::Mat6 stiffness_of(const JointSpring& joint);

// A rectangle's points of integration, exact for what its stiffness needs; a point four times for a pin.
std::array<Vec3, 4> points_of(const Bond& bond);

}  // namespace rodwright::strength
