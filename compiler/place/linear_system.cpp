#include "compiler/place/linear_system.hpp"

#include <algorithm>
#include <numeric>

#include "compiler/limits.hpp"
#include "compiler/place/elimination.hpp"
#include "compiler/place/propagation.hpp"

namespace rodwright {
namespace {

using Rows = std::vector<LinearRow>;

// Sets of unknowns that are merged one with another.
class DisjointSets {
  public:
    explicit DisjointSets(std::size_t count) : parent_(count) {
        std::iota(parent_.begin(), parent_.end(), std::uint32_t{0});
    }

    std::uint32_t find(std::uint32_t member) {
        while (parent_[member] != member) {
            parent_[member] = parent_[parent_[member]];
            member = parent_[member];
        }
        return member;
    }

    // The smaller representative stays one, so that sets are found in increasing order of their first member.
    void merge(std::uint32_t a, std::uint32_t b) {
        a = find(a);
        b = find(b);
        parent_[std::max(a, b)] = std::min(a, b);
    }

  private:
    std::vector<std::uint32_t> parent_;
};

// Fills the values; these stand if no row comes back as contradicted.
std::vector<std::size_t> solve_consistent(const Rows& rows, Values& values, Effort& effort) {
    const Propagated first = propagate(rows, values, effort);
    std::vector<std::size_t> contradicted = first.contradicting;
    if (first.remaining.empty() || effort.used_up()) return contradicted;
    Elimination core(values.size(), PivotRow::shortest, effort);
    for (const std::size_t r : first.remaining) core.add(r, substitute(rows[r], values, effort));
    core.run();
    core.read_values(values);
    const std::vector<std::size_t> more = core.contradicted();
    contradicted.insert(contradicted.end(), more.begin(), more.end());
    return contradicted;
}

DisjointSets connected_unknowns(const Rows& rows, std::size_t unknown_count) {
    DisjointSets sets(unknown_count);
    for (const LinearRow& row : rows) {
        for (const RowEntry& entry : row.entries) sets.merge(row.entries.front().unknown, entry.unknown);
    }
    return sets;
}

// Which rows hang together with one of `from`.
std::vector<bool> connected_rows(const Rows& rows, std::size_t unknown_count,
                                 const std::vector<std::size_t>& from) {
    DisjointSets sets = connected_unknowns(rows, unknown_count);
    std::vector<bool> reached(unknown_count, false);
    std::vector<bool> chosen(rows.size(), false);
    for (const std::size_t r : from) {
        chosen[r] = true;
        if (!rows[r].entries.empty()) reached[sets.find(rows[r].entries.front().unknown)] = true;
    }
    for (std::size_t r = 0; r < rows.size(); ++r) {
        if (!rows[r].entries.empty()) chosen[r] = reached[sets.find(rows[r].entries.front().unknown)];
    }
    return chosen;
}

Elimination eliminate(const Rows& rows, std::size_t unknown_count, const std::vector<bool>& chosen,
                      const std::vector<bool>& only_checked, PivotRow choice, Effort& effort) {
    Elimination core(unknown_count, choice, effort);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        if (chosen[r]) core.add(r, rows[r], only_checked[r]);
    }
    core.run();
    return core;
}

// Marks the last equation of every set that another one than the last contradicted: it is a combination of
// earlier ones, and must not be used. False if there was none to mark.
bool mark_later(const std::vector<Conflict>& conflicts, std::vector<bool>& only_checked) {
    bool marked = false;
    for (const Conflict& each : conflicts) {
        if (each.involved.back() == each.equation) continue;
        only_checked[each.involved.back()] = true;
        marked = true;
    }
    return marked;
}

// Solves the chosen rows so that of contradicting equations the later ones show. Short pivot rows first, as
// they are quick, with equations taken out of use until that is so; should that take long, with the earliest
// rows.
Elimination eliminate_in_order(const Rows& rows, std::size_t unknown_count, const std::vector<bool>& chosen,
                               Effort& effort) {
    constexpr int tries = 20;
    std::vector<bool> only_checked(rows.size(), false);
    for (int i = 0; i < tries; ++i) {
        Elimination core = eliminate(rows, unknown_count, chosen, only_checked, PivotRow::shortest, effort);
        const std::size_t count = core.contradicted().size();
        if (effort.used_up()) return core;
        if (count > limits::diagnostics) break;
        if (!mark_later(core.conflicts(count), only_checked)) return core;
    }
    const std::vector<bool> all_used(rows.size(), false);
    return eliminate(rows, unknown_count, chosen, all_used, PivotRow::earliest, effort);
}

// Solves the parts around contradictions again, so that earlier equations win, and tells what contradicts
// what.
std::vector<Conflict> solve_contradicting(const Rows& rows, const std::vector<std::size_t>& contradicted,
                                          Values& values, Effort& effort) {
    const std::vector<bool> chosen = connected_rows(rows, values.size(), contradicted);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        if (!chosen[r]) continue;
        for (const RowEntry& entry : rows[r].entries) values[entry.unknown].reset();
    }
    const Elimination core = eliminate_in_order(rows, values.size(), chosen, effort);
    if (effort.used_up()) return {};
    core.read_values(values);
    return core.conflicts(limits::diagnostics);
}

std::vector<std::vector<Unknown>> free_groups(const Rows& rows, const Values& values) {
    DisjointSets sets(values.size());
    for (const LinearRow& row : rows) {
        const RowEntry* first = nullptr;
        for (const RowEntry& entry : row.entries) {
            if (values[entry.unknown]) continue;
            if (first == nullptr) first = &entry;
            sets.merge(first->unknown, entry.unknown);
        }
    }
    std::vector<std::vector<Unknown>> groups;
    std::vector<std::size_t> group_of(values.size());
    for (std::uint32_t u = 0; u < values.size(); ++u) {
        if (values[u]) continue;
        const std::uint32_t first = sets.find(u);
        if (first == u) {
            group_of[u] = groups.size();
            groups.emplace_back();
        }
        groups[group_of[first]].push_back(Unknown{u});
    }
    return groups;
}

}  // namespace

LinearSolution solve(std::size_t unknown_count, const std::vector<LinearEquation>& equations) {
    Rows rows;
    rows.reserve(equations.size());
    for (const LinearEquation& equation : equations) rows.push_back(to_row(equation));
    LinearSolution solution;
    solution.values.resize(unknown_count);
    Effort effort;
    const std::vector<std::size_t> contradicted = solve_consistent(rows, solution.values, effort);
    if (!contradicted.empty() && !effort.used_up()) {
        solution.conflicts = solve_contradicting(rows, contradicted, solution.values, effort);
    }
    if (effort.used_up()) {
        solution = {Values(unknown_count), {}, {}, true};
        return solution;
    }
    solution.free_groups = free_groups(rows, solution.values);
    return solution;
}

}  // namespace rodwright
