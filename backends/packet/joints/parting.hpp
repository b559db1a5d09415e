// Where parts go when a piece is taken apart for a picture.
#pragma once

#include <vector>

#include "compiler/graph/piece.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::packet {

// The motion of the first member that closes the joint.
Direction way_in(const Joint& joint);
// How far the first member is in the second along the way in, mm, at most.
double depth_of(const Piece& piece, const Joint& joint);

// How far each part is moved, in the piece's axes, millimetres: the first member of every joint comes out of
// the second against the direction in which it goes in, by `gap` more than it is in; where joints pull
// against one another, each gives way as little as may be (least squares). The parts stay round their middle.
std::vector<Point3> parting(const Piece& piece, double gap);

}  // namespace rodwright::packet
