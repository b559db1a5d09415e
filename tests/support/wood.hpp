// Wood planned for a design from a rack that is written as text.
#pragma once

#include <string>

#include "compiler/stock/plan/read_supply.hpp"
#include "tests/support/design.hpp"

namespace rodwright::testing {

struct PlannedWood {
    WoodSupply supply;
    WoodPlan plan;
    std::string report;  // one line for each diagnostic: `W0901 message`

    const PlannedBoard& board(const std::string& name) const;
    // The pieces of all boards with that label.
    std::vector<PlanArea> places(const std::string& label) const;
};

// Fails the test where the rack, or the milling data laid over the library's, cannot be read.
PlannedWood plan_from(const Piece& piece, const std::string& rack, const std::string& milling = "",
                      cutting::Effort effort = cutting::Effort::quick);

}  // namespace rodwright::testing
