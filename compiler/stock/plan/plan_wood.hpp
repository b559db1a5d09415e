// Planning the wood of a piece: the stage's one function.
#pragma once

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/stock/cutting/problem.hpp"
#include "compiler/stock/plan/wood_plan.hpp"
#include "compiler/stock/rough/milling.hpp"

namespace rodwright {

struct WoodSupply {
    std::optional<Rack> rack;  // without one there are rough sizes only
    MillingData milling;
};

// A plan for all parts that have a wood. Thick parts are planned before thin ones of the same wood, which may
// then use what is left of their boards. Wood at hand is taken first; what the dealer sells only for what
// that does not give. Pieces that no board holds are in `missing` and reported as Code::short_of_wood,
// matches that no board holds as Code::match_given_up. The same on every machine.
WoodPlan plan_wood(const Piece& piece, const WoodSupply& supply, cutting::Effort effort,
                   Diagnostics& diagnostics);

}  // namespace rodwright
