#include "tests/benchmark/cutting/growth.hpp"

#include <fmt/format.h>

#include <cmath>
#include <ctime>

#include "compiler/stock/cutting/random.hpp"
#include "compiler/stock/cutting/solve.hpp"

namespace rodwright::cutting {
namespace {

// Sizes in millimetres as a workshop has them; one part in three is wanted more than once.
Problem job(int dimensions, int pieces) {
    Random random(static_cast<std::uint64_t>(pieces));
    const bool sheets = dimensions == 2;
    Problem problem;
    problem.kerf = {{3, 3}};
    problem.stock.push_back({{{sheets ? 2440 : 4000, sheets ? 1220 : 1}}, std::nullopt, 1, {}});
    while (pieces > 0) {
        PartKind part;
        part.size = {{120 + random.below(1100), sheets ? 60 + random.below(560) : 1}};
        part.quantity = std::min(pieces, random.one_in(3) ? 2 + random.below(5) : 1);
        part.may_turn = sheets && random.one_in(2);
        pieces -= part.quantity;
        problem.parts.push_back(part);
    }
    return problem;
}

}  // namespace

double processor_seconds() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

void print_growth(Effort effort) {
    for (const int dimensions : {1, 2}) {
        double first = 0;
        double last = 0;
        for (const int pieces : {50, 100, 200, 500, 1000, 2000}) {
            const Problem problem = job(dimensions, pieces);
            const double begin = processor_seconds();
            const CuttingPlan plan = solve(problem, effort);
            last = processor_seconds() - begin;
            if (first == 0) first = last;
            fmt::print("{}-D {:>5} parts  cost {:>5}  bound {:>5}  {:.3f} s\n", dimensions, pieces, plan.cost,
                       plan.bound.cost, last);
            std::fflush(stdout);
        }
        fmt::print("{}-D grows with the power of {:.2f}\n", dimensions,
                   std::log(last / first) / std::log(40.0));
    }
}

}  // namespace rodwright::cutting
