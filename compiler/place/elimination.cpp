#include "compiler/place/elimination.hpp"

#include <algorithm>
#include <utility>

namespace rodwright {
namespace {

const Rational& factor_of(const LinearRow& row, std::uint32_t unknown) {
    return std::ranges::lower_bound(row.entries, unknown, {}, &RowEntry::unknown)->factor;
}

bool holds(const LinearRow& row, std::uint32_t unknown) {
    return std::ranges::binary_search(row.entries, unknown, {}, &RowEntry::unknown);
}

// An odd number of 62 bits from the last step of the SplitMix64 generator (Steele, Lea and Flood, 2014).
Rational random_number(std::uint32_t unknown) {
    std::uint64_t z = (unknown + 1ULL) * 0x9E3779B97F4A7C15ULL;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
    return Rational(static_cast<unsigned long>(((z ^ (z >> 31U)) >> 2U) | 1U));
}

}  // namespace

Elimination::Elimination(std::size_t unknown_count, PivotRow choice, Effort& effort)
    : choice_(choice),
      effort_(effort),
      columns_(unknown_count),
      degree_(unknown_count, 0),
      eliminated_(unknown_count, false) {}

void Elimination::add(std::size_t equation, LinearRow row, bool only_checked) {
    const std::size_t index = rows_.size();
    rows_.push_back({equation, std::move(row), {}, only_checked, true});
    for (const RowEntry& entry : rows_.back().row.entries) {
        columns_[entry.unknown].push_back(index);
        ++degree_[entry.unknown];
    }
    note_row(index);
}

void Elimination::run() {
    for (std::uint32_t u = 0; u < degree_.size(); ++u) queue_.push({0, u});
    while (!queue_.empty() && !effort_.used_up()) {
        const Candidate next = queue_.top();
        queue_.pop();
        if (eliminated_[next.unknown] || degree_[next.unknown] == 0) continue;
        consider(next);
    }
}

void Elimination::consider(const Candidate& candidate) {
    effort_.pass_over(columns_[candidate.unknown].size());
    const std::vector<std::size_t> rows = active_rows(candidate.unknown);
    const std::size_t pivot = pivot_row(rows);
    const std::size_t cost = (rows.size() - 1) * (rows_[pivot].row.entries.size() - 1);
    if (cost > candidate.cost) {
        queue_.push({cost, candidate.unknown});
        columns_[candidate.unknown] = rows;
    } else {
        eliminate({pivot, candidate.unknown}, rows);
    }
}

void Elimination::eliminate(const Pivot& pivot, const std::vector<std::size_t>& rows) {
    pivots_.push_back(pivot);
    eliminated_[pivot.unknown] = true;
    retire(pivot.row);
    for (const std::size_t row : rows) {
        if (row != pivot.row && !effort_.used_up()) subtract(row, pivot);
    }
    columns_[pivot.unknown] = {};
}

std::vector<std::size_t> Elimination::active_rows(std::uint32_t unknown) const {
    std::vector<std::size_t> rows = columns_[unknown];
    std::erase_if(rows, [&](std::size_t r) { return !rows_[r].active || !holds(rows_[r].row, unknown); });
    std::ranges::sort(rows);
    rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
    return rows;
}

std::size_t Elimination::pivot_row(const std::vector<std::size_t>& rows) const {
    if (choice_ == PivotRow::earliest) return rows.front();
    return *std::ranges::min_element(rows, {}, [&](std::size_t r) {
        return std::pair(rows_[r].only_checked, rows_[r].row.entries.size());
    });
}

void Elimination::retire(std::size_t pivot_row) {
    rows_[pivot_row].active = false;
    for (const RowEntry& entry : rows_[pivot_row].row.entries) lose(entry.unknown);
}

void Elimination::subtract(std::size_t target, const Pivot& pivot) {
    const LinearRow& source = rows_[pivot.row].row;
    WorkRow& changed = rows_[target];
    const Rational factor = factor_of(changed.row, pivot.unknown) / factor_of(source, pivot.unknown);
    changed.row = combine(target, source, factor);
    changed.steps.push_back({pivots_.size() - 1, factor});
    note_row(target);
}

// Target minus factor times pivot, two sorted rows into one.
LinearRow Elimination::combine(std::size_t target, const LinearRow& pivot, const Rational& factor) {
    LinearRow& row = rows_[target].row;
    LinearRow result;
    result.entries.reserve(row.entries.size() + pivot.entries.size());
    result.constant = row.constant - factor * pivot.constant;
    auto own = row.entries.begin();
    for (const RowEntry& other : pivot.entries) {
        while (own != row.entries.end() && own->unknown < other.unknown)
            result.entries.push_back(std::move(*own++));
        RowEntry sum{other.unknown, -factor * other.factor};
        const bool both = own != row.entries.end() && own->unknown == other.unknown;
        if (both) sum.factor += (own++)->factor;
        if (!both) gain(sum.unknown, target);
        if (sum.factor == 0) {
            lose(sum.unknown);
        } else {
            effort_.spend(sum.factor);
            result.entries.push_back(std::move(sum));
        }
    }
    std::move(own, row.entries.end(), std::back_inserter(result.entries));
    effort_.pass_over(result.entries.size());
    return result;
}

void Elimination::gain(std::uint32_t unknown, std::size_t row) {
    columns_[unknown].push_back(row);
    ++degree_[unknown];
}

void Elimination::lose(std::uint32_t unknown) {
    const std::size_t left = --degree_[unknown];
    if (left > 0 && !eliminated_[unknown]) queue_.push({left - 1, unknown});
}

void Elimination::note_row(std::size_t row) {
    const LinearRow& content = rows_[row].row;
    if (content.entries.empty() && content.constant != 0) contradicted_.push_back(row);
    if (content.entries.size() == 1 && choice_ == PivotRow::shortest) {
        queue_.push({0, content.entries.front().unknown});
    }
}

std::vector<Rational> Elimination::back_substitute(bool homogeneous) const {
    std::vector<Rational> values(columns_.size());
    for (std::uint32_t u = 0; homogeneous && u < values.size(); ++u) {
        if (!eliminated_[u]) values[u] = random_number(u);
    }
    for (auto pivot = pivots_.rbegin(); pivot != pivots_.rend() && !effort_.used_up(); ++pivot) {
        const LinearRow& row = rows_[pivot->row].row;
        Rational sum = homogeneous ? Rational(0) : row.constant;
        for (const RowEntry& entry : row.entries) {
            if (entry.unknown == pivot->unknown) continue;
            sum += entry.factor * values[entry.unknown];
            if (!effort_.spend(sum)) return values;
        }
        values[pivot->unknown] = -sum / factor_of(row, pivot->unknown);
        effort_.spend(values[pivot->unknown]);
    }
    return values;
}

void Elimination::read_values(Values& values) const {
    std::vector<Rational> solution = back_substitute(false);
    const std::vector<Rational> freedom = back_substitute(true);
    for (const Pivot& pivot : pivots_) {
        if (freedom[pivot.unknown] == 0) values[pivot.unknown] = std::move(solution[pivot.unknown]);
    }
}

std::vector<std::size_t> Elimination::contradicted() const {
    std::vector<std::size_t> equations;
    for (const std::size_t row : contradicted_) equations.push_back(rows_[row].equation);
    return equations;
}

// The steps backwards give the row as a combination of equations. The pivots' equations are independent, so
// that the combination is the only one, and without any one of its equations the rest is consistent.
Conflict Elimination::conflict(std::size_t row) const {
    Conflict result{rows_[row].equation, rows_[row].row.constant, {rows_[row].equation}};
    std::vector<Rational> weights(pivots_.size());
    for (const Step& step : rows_[row].steps) weights[step.pivot] -= step.factor;
    for (std::size_t p = pivots_.size(); p-- > 0;) {
        if (weights[p] == 0) continue;
        const WorkRow& used = rows_[pivots_[p].row];
        result.involved.push_back(used.equation);
        for (const Step& step : used.steps) {
            weights[step.pivot] -= weights[p] * step.factor;
            if (!effort_.spend(weights[step.pivot])) return result;
        }
    }
    std::ranges::sort(result.involved);
    return result;
}

std::vector<Conflict> Elimination::conflicts(std::size_t most) const {
    std::vector<std::size_t> rows = contradicted_;
    std::ranges::sort(rows);
    rows.resize(std::min(rows.size(), most));
    std::vector<Conflict> result;
    for (const std::size_t row : rows) result.push_back(conflict(row));
    return result;
}

}  // namespace rodwright
