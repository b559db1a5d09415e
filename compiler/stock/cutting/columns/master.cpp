#include "compiler/stock/cutting/columns/master.hpp"

#include <algorithm>
#include <cmath>

namespace rodwright::cutting::columns {
namespace {

constexpr double tolerance = 1e-9;

}  // namespace

Master::Master(const Cover& cover) : rows_(cover.wanted.size()), starts_(1, 0) {
    for (const Bar& bar : cover.bars) {
        bar_costs_.push_back(static_cast<double>(bar.cost));
        penalty_ = std::max(penalty_, 10.0 * bar_costs_.back());
        row_of_bar_.push_back(bar.limited ? static_cast<int>(rows_++) : -1);
    }
    basis_.resize(rows_);
    values_.resize(rows_);
    for (std::size_t i = 0; i < cover.wanted.size(); ++i) {
        // Slightly different quantities keep the simplex method from standing still at degenerate corners.
        values_[i] = cover.wanted[i].quantity + 1e-7 * static_cast<double>(1 + (i * 7919) % 101);
        basis_[i] = costs_.size();
        add_column(penalty_, {{static_cast<int>(i), 1.0}});
        add_column(0, {{static_cast<int>(i), -1.0}});
    }
    for (std::size_t bar = 0; bar < cover.bars.size(); ++bar) {
        if (row_of_bar_[bar] < 0) continue;
        const auto row = static_cast<std::size_t>(row_of_bar_[bar]);
        values_[row] = cover.bars[bar].available;
        basis_[row] = costs_.size();
        add_column(0, {{row_of_bar_[bar], 1.0}});
    }
    inverse_.assign(rows_ * rows_, 0.0);
    for (std::size_t i = 0; i < rows_; ++i) inverse_[i * rows_ + i] = 1.0;
    find_duals();
}

void Master::add_column(double cost, const std::vector<std::pair<int, double>>& entries) {
    for (const auto& entry : entries) {
        entry_rows_.push_back(entry.first);
        entry_values_.push_back(entry.second);
    }
    starts_.push_back(entry_rows_.size());
    costs_.push_back(cost);
    pattern_of_.push_back(nowhere);
}

void Master::add(const Pattern& pattern) {
    const auto bar = static_cast<std::size_t>(pattern.bar);
    std::vector<std::pair<int, double>> entries;
    for (const auto& entry : pattern.entries) entries.emplace_back(entry.wanted, entry.count);
    if (row_of_bar_[bar] >= 0) entries.emplace_back(row_of_bar_[bar], 1.0);
    add_column(bar_costs_[bar], entries);
    column_of_.push_back(costs_.size() - 1);
    pattern_of_.back() = patterns_.size();
    patterns_.push_back(pattern);
}

double Master::reduced_cost(std::size_t column) const {
    double cost = costs_[column];
    for (std::size_t e = starts_[column]; e < starts_[column + 1]; ++e) {
        cost -= duals_[static_cast<std::size_t>(entry_rows_[e])] * entry_values_[e];
    }
    return cost;
}

void Master::optimise() {
    const long limit = pivots_ + 50 * static_cast<long>(rows_) + 1000;
    while (pivots_ < limit) {
        work_ += static_cast<long>(entry_rows_.size());
        std::size_t best = nowhere;
        double least = -1e-7;
        for (std::size_t j = 0; j < costs_.size(); ++j) {
            const double cost = reduced_cost(j);
            if (cost >= least) continue;
            least = cost;
            best = j;
        }
        if (best == nowhere) return;
        enter(best);
    }
}

void Master::start_from(const std::vector<std::size_t>& patterns) {
    std::vector<char> settled(rows_, 0);
    for (const std::size_t pattern : patterns) {
        find_direction(column_of_[pattern]);
        std::size_t best = nowhere;
        for (std::size_t i = 0; i < rows_; ++i) {
            if (settled[i] != 0 || std::abs(direction_[i]) < 1e-2) continue;
            if (best == nowhere || std::abs(direction_[i]) > std::abs(direction_[best])) best = i;
        }
        if (best == nowhere) continue;
        settled[best] = 1;
        ++pivots_;
        pivot(best, column_of_[pattern]);
    }
    make_feasible();
}

// Negative values are lifted by one artificial column, which is as dear as uncovered pieces.
void Master::make_feasible() {
    const auto least = std::min_element(values_.begin(), values_.end());
    if (least == values_.end() || *least >= 0) return;
    std::vector<double> sum(rows_, 0.0);
    for (std::size_t i = 0; i < rows_; ++i) {
        if (values_[i] >= 0) continue;
        const std::size_t column = basis_[i];
        for (std::size_t e = starts_[column]; e < starts_[column + 1]; ++e) {
            sum[static_cast<std::size_t>(entry_rows_[e])] -= entry_values_[e];
        }
    }
    std::vector<std::pair<int, double>> entries;
    for (std::size_t k = 0; k < rows_; ++k) {
        if (sum[k] != 0) entries.emplace_back(static_cast<int>(k), sum[k]);
    }
    add_column(penalty_ * static_cast<double>(rows_), entries);
    find_direction(costs_.size() - 1);
    pivot(static_cast<std::size_t>(least - values_.begin()), costs_.size() - 1);
}

void Master::find_direction(std::size_t column) {
    direction_.assign(rows_, 0.0);
    for (std::size_t e = starts_[column]; e < starts_[column + 1]; ++e) {
        const auto k = static_cast<std::size_t>(entry_rows_[e]);
        for (std::size_t i = 0; i < rows_; ++i) direction_[i] += inverse_[i * rows_ + k] * entry_values_[e];
    }
}

void Master::enter(std::size_t column) {
    find_direction(column);
    std::size_t leaving = nowhere;
    double step = 0;
    for (std::size_t i = 0; i < rows_; ++i) {
        if (direction_[i] <= tolerance) continue;
        const double ratio = std::max(0.0, values_[i]) / direction_[i];
        const bool closer = leaving == nowhere || ratio < step - 1e-12;
        if (!closer && !(ratio <= step + 1e-12 && direction_[i] > direction_[leaving])) continue;
        step = ratio;
        leaving = i;
    }
    ++pivots_;  // also counts what cannot happen: costs are not negative, so some row limits the step
    if (leaving != nowhere) pivot(leaving, column);
}

// Needs find_direction(column).
void Master::pivot(std::size_t leaving, std::size_t column) {
    double* pivot_row = &inverse_[leaving * rows_];
    const double scale = 1.0 / direction_[leaving];
    support_.clear();
    for (std::size_t k = 0; k < rows_; ++k) {
        if (std::abs(pivot_row[k]) < 1e-14) continue;
        pivot_row[k] *= scale;
        support_.push_back(k);
    }
    const double step = values_[leaving] * scale;
    for (std::size_t i = 0; i < rows_; ++i) {
        if (i == leaving || std::abs(direction_[i]) < 1e-13) continue;
        double* row = &inverse_[i * rows_];
        const double factor = direction_[i];
        for (const std::size_t k : support_) row[k] -= factor * pivot_row[k];
        values_[i] -= factor * step;
        work_ += static_cast<long>(support_.size());
    }
    values_[leaving] = step;
    // The duals move along the pivot row by the reduced cost of the entering column.
    const double reduced = reduced_cost(column);
    for (const std::size_t k : support_) duals_[k] += reduced * pivot_row[k];
    basis_[leaving] = column;
    if (pivots_ % 64 == 0) find_duals();
}

void Master::find_duals() {
    duals_.assign(rows_, 0.0);
    for (std::size_t i = 0; i < rows_; ++i) {
        const double cost = costs_[basis_[i]];
        if (cost == 0) continue;
        for (std::size_t k = 0; k < rows_; ++k) duals_[k] += cost * inverse_[i * rows_ + k];
    }
}

double Master::bar_dual(std::size_t bar) const {
    return row_of_bar_[bar] < 0 ? 0.0 : duals_[static_cast<std::size_t>(row_of_bar_[bar])];
}

double Master::objective() const {
    double sum = 0;
    for (std::size_t i = 0; i < rows_; ++i) sum += values_[i] * costs_[basis_[i]];
    return sum;
}

bool Master::feasible() const {
    for (std::size_t i = 0; i < rows_; ++i) {
        if (values_[i] < -1e-4 || (costs_[basis_[i]] >= penalty_ && values_[i] > 1e-4)) return false;
    }
    return true;
}

std::vector<double> Master::amounts() const {
    std::vector<double> amounts(patterns_.size(), 0.0);
    for (std::size_t i = 0; i < rows_; ++i) {
        if (pattern_of_[basis_[i]] != nowhere) amounts[pattern_of_[basis_[i]]] = values_[i];
    }
    return amounts;
}

std::vector<std::size_t> Master::basis() const {
    std::vector<std::size_t> patterns;
    for (const std::size_t column : basis_) {
        if (pattern_of_[column] != nowhere) patterns.push_back(pattern_of_[column]);
    }
    return patterns;
}

}  // namespace rodwright::cutting::columns
