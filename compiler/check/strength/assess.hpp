// Strength and stiffness of a whole piece: an estimate, no rating. What is assumed stands with assumptions().
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/check/strength/judge.hpp"

namespace rodwright::strength {

struct Assessment {
    std::vector<Case> cases;
    Structure structure;
    Verdict verdict;
    bool settled = true;  // whether in every case it was found where joints press
};

// Empty if the piece has no load and no use, or why it cannot be worked out is in `diagnostics`. `meshes` as
// Sections takes them.
std::optional<Assessment> assess(const Piece& piece, const std::vector<Mesh>& meshes,
                                 Diagnostics& diagnostics);

}  // namespace rodwright::strength
