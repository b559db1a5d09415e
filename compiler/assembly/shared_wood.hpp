// Parts that take up the same room.
#pragma once

#include <cstddef>
#include <vector>

#include "compiler/assembly/blocking.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

struct SharedWood {
    std::size_t a = 0;  // less than b
    std::size_t b = 0;
    double volume = 0;  // mm^3
};

// The box of a mesh; inside out where the mesh is empty.
Bounds bounds_of(const Mesh& mesh);

// Pairs of parts whose meshes' boxes come nearer to each other than `within`, mm; below 0, that overlap by
// more than that. Ascending; found with a tree of boxes, in n log n and what is found.
std::vector<std::pair<std::size_t, std::size_t>> near_pairs(const std::vector<Mesh>& meshes, double within);

// Pairs that share more than a thousandth of a cubic millimetre. `meshes` are those of all parts of
// `solids`.
std::vector<SharedWood> shared_wood(const std::vector<Mesh>& meshes, SolidStore& solids);

}  // namespace rodwright
