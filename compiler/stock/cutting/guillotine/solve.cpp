#include "compiler/stock/cutting/guillotine/solve.hpp"

#include <array>
#include <limits>

#include "compiler/stock/cutting/bounds/bounds.hpp"
#include "compiler/stock/cutting/guillotine/pattern_start.hpp"
#include "compiler/stock/cutting/guillotine/search.hpp"
#include "compiler/stock/cutting/guillotine/trees.hpp"

namespace rodwright::cutting::guillotine {
namespace {

// About what one core of 2.5 GHz does in 0.04, 0.8 and 16 seconds.
Amount work_limit(Effort effort) {
    switch (effort) {
        case Effort::quick:
            return 6'000'000;
        case Effort::normal:
            return 130'000'000;
        case Effort::deep:
            return 2'600'000'000;
    }
    return 0;
}

class Solver {
  public:
    explicit Solver(const Problem& problem) : kinds_(problem), bound_(lower_bound(problem)) {}

    // A search of its own for each effort up to the one asked for: more effort never does worse.
    CuttingPlan solve(Effort effort) {
        for (const Effort step : {Effort::quick, Effort::normal, Effort::deep}) {
            run(work_limit(step));
            if (step == effort || best_.optimal()) break;
        }
        return std::move(best_);
    }

  private:
    void run(Amount limit) {
        Search search(kinds_, ++runs_);
        if (has_many_equal_parts(kinds_)) {
            start_from_patterns(kinds_, search, limit);
        }
        search.construct();
        if (!search.complete()) search.reach(std::numeric_limits<Amount>::max(), limit);
        keep(search);
        while (best_.complete() && best_.cost > bound_.cost) {
            if (!search.reach(best_.cost - 1, limit)) break;
            keep(search);
        }
    }

    void keep(const Search& search) {
        const bool better = runs_ == 1 || search.missing_weight() < missing_weight_ ||
                            (search.complete() && search.cost() < best_.cost);
        if (!better) return;
        missing_weight_ = search.missing_weight();
        best_ = CuttingPlan{};
        for (const Layout& layout : search.layouts()) {
            if (layout.in_use()) best_.sheets.push_back(cut_tree(kinds_, layout));
        }
        best_.missing = search.missing();
        best_.cost = search.cost();
        best_.bound = bound_;
    }

    Kinds kinds_;
    LowerBound bound_;
    CuttingPlan best_;
    Amount missing_weight_ = 0;
    std::uint64_t runs_ = 0;
};

}  // namespace

CuttingPlan solve(const Problem& problem, Effort effort) {
    return Solver(problem).solve(effort);
}

}  // namespace rodwright::cutting::guillotine
