#include "compiler/stock/cutting/solve.hpp"

#include "compiler/stock/cutting/guillotine/solve.hpp"

namespace rodwright::cutting {

CuttingPlan solve(const Problem& problem, Effort effort) {
    return guillotine::solve(problem, effort);
}

}  // namespace rodwright::cutting
