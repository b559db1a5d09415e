// An independent check of wood plans: nothing here is shared with what makes them.
#pragma once

#include <string>
#include <vector>

#include "compiler/stock/plan/read_supply.hpp"
#include "compiler/stock/plan/wood_plan.hpp"

namespace rodwright::testing {

// Faults of a plan, in words:
//   - a part that is in no piece, in two, or whose staves are not all there; or too small a piece for it;
//   - a cut of something that is not there, not from edge to edge, or without its kerf;
//   - a piece on a defect (but on the face of a board that none of its parts shows), on an end check, on
//   sapwood, or beyond the edge of a board that tapers;
//   - a piece with its length across the grain, or out of a board of another wood or too thin;
//   - more boards of an entry than the rack has, or a board that the rack does not have in that size;
//   - a bought board that the dealer does not sell;
//   - a cut that its saw cannot hold or reach, or takes more than the plan leaves for it, or by hand where a
//   machine can.
// Parts that the plan says are missing are not asked for.
std::vector<std::string> faults_of(const WoodPlan& plan, const Piece& piece, const WoodSupply& supply);

}  // namespace rodwright::testing
