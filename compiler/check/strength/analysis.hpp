// A structure under its loads: motions and forces, with joints that press where they press.
#pragma once

#include <optional>
#include <vector>

#include "compiler/check/strength/load_cases.hpp"

namespace rodwright::strength {

struct CaseResult {
    frame::Solution solution;
    std::vector<Vec3> per_length;  // by beam: the load on it, N/mm, in the piece's axes
    bool settled = true;           // whether it was found which contacts press
};

// Empty, with why in `fault`, if the frame cannot be solved. Own weight is in every case. Changes which
// contacts of the structure press.
std::optional<CaseResult> solve_case(Structure& structure, const Case& loads, frame::Fault& fault);

}  // namespace rodwright::strength
