// How much wood there is in a direction: rays through a part's surface, along the axes of the piece.
#pragma once

#include <optional>

#include "compiler/assembly/blocking.hpp"

namespace rodwright {

// From a point in the wood, how far it is to the surface that way, mm; empty where the point is not in the
// wood. A ray through the very edge of a face may count it twice or not at all: keep off the corners of what
// is square.
std::optional<double> wood_ahead(const Mesh& mesh, const Point3& from, Direction way);

}  // namespace rodwright
