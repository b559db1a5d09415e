// Moves of axis-parallel things: a turn (or reflection) about the origin, then a shift.
#pragma once

#include "compiler/graph/piece.hpp"

namespace rodwright {

struct Isometry {
    Turn turn;
    Vector move;

    Vector apply(const Vector& point) const;
    Body apply(const Body& body) const;
    BoxEdge apply(const BoxEdge& edge) const;
    Isometry inverse() const;
};

Face apply(const Turn& turn, Face face);
Isometry compose(const Isometry& first, const Isometry& second);

// From a frame's own coordinates (u, v, w as wide, deep, tall) to those that the frame is given in.
Isometry from_frame(const Frame& frame);

// The same place in space written in one way only, whatever frame it was described in: for comparing bodies.
std::string canonical(const Body& body);

}  // namespace rodwright
