// Systems of linear equations over exact rationals.
//
// Placement makes one equation of every line that relates faces; there are about as many equations as
// unknowns (six for a part), nearly all with two or three terms, and nearly all determine one unknown once
// others are known. So: first propagation (an equation with one unknown left determines it), then sparse
// elimination for the small cores that remain (rows, parts that depend on each other). The result does not
// depend on the order of equations.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "compiler/evaluate/linear.hpp"
#include "compiler/quantity/rational.hpp"

namespace rodwright {

// An equation that the others contradict: with the values they give, its left side is `residual`, not zero.
// `involved` are indices of a set of equations that cannot all hold, in increasing order and including the
// equation itself; leaving any one of them out would make the rest of the set consistent.
struct Conflict {
    std::size_t equation = 0;
    Rational residual;
    std::vector<std::size_t> involved;
};

struct LinearSolution {
    std::vector<std::optional<Rational>> values;  // by unknown; empty where nothing determines it
    // In order of equations; none is a consequence of another's. The first limits::diagnostics only.
    std::vector<Conflict> conflicts;
    // Unknowns that are not determined but tied to one another by equations, in groups, each in increasing
    // order; an undetermined unknown that no equation mentions is a group of its own.
    std::vector<std::vector<Unknown>> free_groups;
    bool gave_up =
        false;  // past limits::solving: no values, and nothing is known of conflicts or free unknowns
};

// Unknowns are 0 .. unknown_count-1. Among contradicting equations, later ones (by index) are the ones
// reported.
LinearSolution solve(std::size_t unknown_count, const std::vector<LinearEquation>& equations);

}  // namespace rodwright
