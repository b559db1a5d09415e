#include "compiler/stock/cutting/guillotine/solve.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <numeric>

#include "compiler/stock/cutting/bounds/bounds.hpp"
#include "compiler/stock/cutting/guillotine/joins.hpp"
#include "compiler/stock/cutting/guillotine/leftovers.hpp"
#include "compiler/stock/cutting/guillotine/pattern_start.hpp"
#include "compiler/stock/cutting/guillotine/search.hpp"

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

// Of joins; each rectangle made takes memory, too.
Amount join_limit(Effort effort) {
    return std::min<Amount>(work_limit(effort) / 3, 400'000'000);
}

class Solver {
  public:
    explicit Solver(const Problem& problem) : kinds_(problem) { plan_.bound = lower_bound(problem); }

    // A search of its own for each effort up to the one asked for: more effort never does worse.
    void find_cost(Effort effort) {
        for (const Effort step : {Effort::quick, Effort::normal, Effort::deep}) {
            run(step);
            if (step == Effort::quick) try_one_piece(join_limit(effort));
            if (step == effort || plan_.optimal()) break;
        }
    }

    void find_leftovers(Effort effort) {
        if (plan_.complete()) layouts_ = with_large_leftovers(kinds_, layouts_, effort);
    }

    CuttingPlan plan() && {
        write_sheets(kinds_, layouts_, plan_);
        return std::move(plan_);
    }

  private:
    void run(Effort effort) {
        Amount limit = work_limit(effort);
        Search search(kinds_, ++runs_);
        if (has_many_equal_parts(kinds_)) {
            const Amount used = start_from_patterns(kinds_, search, limit);
            // What patterns take comes off the search where both together would take too long.
            limit = std::min(limit, limit * 5 / 3 - used);
        }
        search.construct();
        if (!search.complete()) search.reach(std::numeric_limits<Amount>::max(), limit);
        keep(search);
        while (plan_.complete() && plan_.cost > plan_.bound.cost) {
            if (!search.reach(plan_.cost - 1, limit)) break;
            keep(search);
        }
    }

    // Where whatever costs less than the plan is one piece of stock: does one hold all parts? Joins know no
    // shortest cut.
    void try_one_piece(Amount work) {
        if (!plan_.complete() || plan_.optimal() || kinds_.rule.shortest_cut != Size{}) return;
        std::vector<int> order(kinds_.stock.size());
        std::iota(order.begin(), order.end(), 0);
        const auto cost = [&](int stock) { return kinds_.stock[static_cast<std::size_t>(stock)].cost; };
        std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return cost(a) < cost(b); });
        if (2 * cost(order.front()) < plan_.cost) return;
        bool proved = true;
        for (const int stock : order) {
            if (cost(stock) >= plan_.cost) break;
            if (kinds_.stock[static_cast<std::size_t>(stock)].available == 0) continue;
            Layout layout(kinds_);
            const Joined joined = join_all(kinds_, stock, work, layout);
            proved = proved && joined != Joined::open;
            if (joined != Joined::made) continue;
            layouts_ = {layout};
            plan_.cost = cost(stock);
        }
        if (proved && plan_.cost > plan_.bound.cost) plan_.bound = {plan_.cost, BoundMethod::joins};
    }

    void keep(const Search& search) {
        const bool better = runs_ == 1 || search.missing_weight() < missing_weight_ ||
                            (search.complete() && search.cost() < plan_.cost);
        if (!better) return;
        missing_weight_ = search.missing_weight();
        layouts_.clear();
        for (const Layout& layout : search.layouts()) {
            if (layout.in_use()) layouts_.push_back(layout);
        }
        plan_.missing = search.missing();
        plan_.cost = search.cost();
    }

    Kinds kinds_;
    CuttingPlan plan_;  // the best so far, but its sheets:
    std::vector<Layout> layouts_;
    Amount missing_weight_ = 0;
    std::uint64_t runs_ = 0;
};

}  // namespace

CuttingPlan solve(const Problem& problem, Effort effort) {
    Solver solver(problem);
    solver.find_cost(effort);
    solver.find_leftovers(effort);
    return std::move(solver).plan();
}

CuttingPlan solve_for_cost_only(const Problem& problem, Effort effort) {
    Solver solver(problem);
    solver.find_cost(effort);
    return std::move(solver).plan();
}

}  // namespace rodwright::cutting::guillotine
