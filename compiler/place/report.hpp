// What placement has to say about a solution; private to compiler/place/.
#pragma once

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/evaluate/statements.hpp"
#include "compiler/place/linear_system.hpp"
#include "compiler/place/place.hpp"

namespace rodwright {

// Lines that cannot all hold (lines_disagree).
void report_conflicts(const Statements& statements, const LinearSolution& solution, Diagnostics& diagnostics);
// Faces without a place (no_place), rows with too many unknowns (row_unknowns). Parts with a line that has no
// value, and what hangs on them, are passed over.
void report_free(const Statements& statements, const LinearSolution& solution, Diagnostics& diagnostics);
// Parts with no thickness, or less (no_size).
void report_sizes(const Statements& statements, const Places& places, Diagnostics& diagnostics);

}  // namespace rodwright
