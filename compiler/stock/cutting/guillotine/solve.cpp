#include "compiler/stock/cutting/guillotine/solve.hpp"

#include <limits>
#include <cstdlib>
#include <cstdio>
#include <numeric>
#include "compiler/stock/cutting/guillotine/pattern_start.hpp"

#include "compiler/stock/cutting/guillotine/search.hpp"
#include "compiler/stock/cutting/guillotine/trees.hpp"
#include "compiler/stock/cutting/bounds/bounds.hpp"

namespace rodwright::cutting::guillotine {
namespace {

// About what a core does in 0.05, 1 and 20 seconds.
Amount work_limit(Effort effort) {
    if (const char* s = std::getenv("WORK")) return std::atoll(s);
    switch (effort) {
        case Effort::quick:
            return 5'000'000;
        case Effort::normal:
            return 100'000'000;
        case Effort::deep:
            return 2'000'000'000;
    }
    return 0;
}

CuttingPlan plan_of(const Kinds& kinds, const Search& search) {
    CuttingPlan plan;
    for (const Layout& layout : search.layouts()) {
        if (layout.in_use()) plan.sheets.push_back(cut_tree(kinds, layout));
    }
    plan.missing = search.missing();
    plan.cost = search.cost();
    return plan;
}

}  // namespace

CuttingPlan solve(const Problem& problem, Effort effort) {
    const Kinds kinds(problem);
    const LowerBound bound = lower_bound(problem);
    const Amount limit = work_limit(effort);
    Search search(kinds, std::getenv("SEED")?std::atoi(std::getenv("SEED")):1);
    if (!std::getenv("NOPAT") && has_many_equal_parts(kinds)) { start_from_patterns(kinds, search, limit / 2); if (std::getenv("VERB")) fprintf(stderr,"patterns: cost %ld missing %d\n",(long)search.cost(), std::accumulate(search.missing().begin(),search.missing().end(),0)); }
    search.construct();
    if (std::getenv("VERB")) fprintf(stderr,"start: cost %ld\n",(long)search.cost());
    if (!search.complete()) search.reach(std::numeric_limits<Amount>::max(), limit);
    CuttingPlan best = plan_of(kinds, search);
    while (search.complete() && search.cost() > bound.cost) {
        if (!search.reach(search.cost() - 1, limit)) break;
        best = plan_of(kinds, search);
    }
    best.bound = bound;
    return best;
}

}  // namespace rodwright::cutting::guillotine
