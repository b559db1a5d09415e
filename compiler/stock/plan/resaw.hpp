// Thin parts out of thick boards: blanks that are sawn open into leaves.
#pragma once

#include "compiler/stock/plan/group_plan.hpp"

namespace rodwright {

// How thick a board has to be to give that many leaves: each with both its faces to clean, and the saw
// between them.
Rational thickness_for_leaves(int leaves, const Rational& finished, const MillingData& milling);

// The same pieces, as many at a time as one blank out of boards of that thickness gives leaves; the rest as a
// blank of fewer. What is too wide to stand on edge at the saw, or too thick, stays as it is.
std::vector<Demand> as_leaves(std::vector<Demand> demands, const Rational& thickness,
                              const MillingData& milling);

// A group in two: pieces that one thickness of board gives several at a time of, as leaves, and the others.
struct ResawSplit {
    DemandGroup leaves;
    std::optional<DemandGroup> rest;
};

// One for each thickness of the boards at hand from which some piece can be sawn twice or more, thinnest
// first. Panels whose staves are thin enough go with the leaves.
std::vector<ResawSplit> resaw_splits(const DemandGroup& group, const Planning& planning);

}  // namespace rodwright
