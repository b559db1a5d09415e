// How a piece goes together, as far as its solids tell.
#pragma once

#include <optional>

#include "compiler/assembly/take_apart.hpp"
#include "compiler/graph/piece.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

struct AssemblyFacts {
    std::vector<Mesh> surfaces;  // by part
    Blocking blocking;
    TakenApart apart;
};

// From the parts' surfaces, and from dowels, which are in none of them: what these hold is drawn off along
// them only.
Blocking blocking_of(const Piece& piece, const std::vector<Mesh>& surfaces);

// Empty where a part has no solid, or there are more than limits::tried_parts. Reports nothing.
std::optional<AssemblyFacts> assembly_facts(const Piece& piece, SolidStore& solids);

}  // namespace rodwright
