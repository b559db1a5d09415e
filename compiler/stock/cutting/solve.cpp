#include "compiler/stock/cutting/solve.hpp"
#include <cstdlib>

#include "compiler/stock/cutting/guillotine/solve.hpp"
#include "compiler/stock/cutting/linear/solve.hpp"

namespace rodwright::cutting {

CuttingPlan solve(const Problem& problem, Effort effort) {
    if (!std::getenv("NOLIN") && linear::applies(problem)) return linear::solve(problem, effort);
    return guillotine::solve(problem, effort);
}

}  // namespace rodwright::cutting
