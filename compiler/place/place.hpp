// Statements to places: one exact linear solve over all faces and extents.
#pragma once

#include <optional>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/evaluate/evaluator.hpp"
#include "compiler/evaluate/statements.hpp"
#include "compiler/geometry/geometry.hpp"

namespace rodwright {

struct Places {
    UnknownValues values;              // by unknown
    std::vector<Box> instances;        // by instance; meaningless where a face has no place
    std::vector<Box> containers;       // by container
    std::vector<bool> instance_known;  // every face has a place
};

// Solves the equations. Missing, contradictory and impossible places are reported with the lines involved.
Places place(const Statements& statements, Diagnostics& diagnostics);

// Whether what one copy was taken for holds for all of them; reports where not. Values must be settled.
void check_assumptions(const Statements& statements, Evaluator& evaluator);

// Evaluates every `require` with the places known; reports those that do not hold.
void check_requirements(const Statements& statements, Evaluator& evaluator);

// Evaluates the lets and params that nothing asked for, so that what is wrong with them is reported too.
void check_unused(Statements& statements, Evaluator& evaluator);

// How many parts each fitted row takes: the whole number nearest to what the wanted gap gives. Call with the
// places of a piece whose fitted rows have one part each; reports rows that cannot be counted.
RowCounts count_fitted_rows(const Statements& statements, Evaluator& evaluator);

}  // namespace rodwright
