// Solids as triangles.
#pragma once

#include <vector>

#include <TopoDS_Shape.hxx>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::occt {

// Within `tolerance` (mm) of the shape. The shape keeps its mesh and is meshed again only for a finer one.
std::vector<Triangle> triangulate(const TopoDS_Shape& solid, double tolerance);

}  // namespace rodwright::occt
