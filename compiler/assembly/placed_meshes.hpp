// The surfaces of a piece's parts where they are.
#pragma once

#include "compiler/assembly/blocking.hpp"

namespace rodwright {

// By part; empty for one that has no solid. Flat faces are exact; between the corners of a curved one the
// surface is out by mesh_tolerance at most.
std::vector<Mesh> placed_meshes(const Piece& piece, SolidStore& solids);

}  // namespace rodwright
