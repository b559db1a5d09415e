#include "compiler/stock/cutting/linear/master.hpp"

#include <algorithm>
#include <cmath>

namespace rodwright::cutting::linear {
namespace {

constexpr int artificial = -1;
constexpr double tolerance = 1e-9;

}  // namespace

Master::Master(const Lengths& lengths) : lengths_(lengths), rows_(lengths.wanted.size()) {
    Amount dearest = 1;
    for (const Bar& bar : lengths.bars) {
        dearest = std::max(dearest, bar.cost);
        row_of_bar_.push_back(bar.limited ? static_cast<int>(rows_++) : artificial);
    }
    penalty_ = 10.0 * static_cast<double>(dearest);
    values_.resize(rows_);
    for (std::size_t i = 0; i < lengths.wanted.size(); ++i) {
        // Slightly different quantities keep the simplex method from standing still at degenerate corners.
        values_[i] = lengths.wanted[i].quantity + 1e-7 * static_cast<double>(1 + (i * 7919) % 101);
        columns_.push_back({0, {{static_cast<int>(i), -1.0}}});
    }
    basis_.assign(rows_, artificial);
    for (std::size_t bar = 0; bar < lengths.bars.size(); ++bar) {
        if (row_of_bar_[bar] == artificial) continue;
        const auto row = static_cast<std::size_t>(row_of_bar_[bar]);
        values_[row] = lengths.bars[bar].available;
        basis_[row] = static_cast<int>(columns_.size());
        columns_.push_back({0, {{row_of_bar_[bar], 1.0}}});
    }
    inverse_.assign(rows_ * rows_, 0.0);
    for (std::size_t i = 0; i < rows_; ++i) inverse_[i * rows_ + i] = 1.0;
    find_duals();
}

void Master::add(const Pattern& pattern) {
    Column column;
    const auto bar = static_cast<std::size_t>(pattern.bar);
    column.cost = static_cast<double>(lengths_.bars[bar].cost);
    for (const auto& entry : pattern.entries) column.entries.emplace_back(entry.wanted, entry.count);
    if (row_of_bar_[bar] != artificial) column.entries.emplace_back(row_of_bar_[bar], 1.0);
    columns_.push_back(std::move(column));
    patterns_.push_back(pattern);
}

double Master::reduced_cost(const Column& column) const {
    double cost = column.cost;
    for (const auto& entry : column.entries) cost -= duals_[static_cast<std::size_t>(entry.first)] * entry.second;
    return cost;
}

void Master::optimise() {
    const long limit = pivots_ + 50 * static_cast<long>(rows_) + 1000;
    while (pivots_ < limit) {
        int best = artificial;
        double least = -1e-7;
        for (std::size_t j = 0; j < columns_.size(); ++j) {
            const double cost = reduced_cost(columns_[j]);
            if (cost >= least) continue;
            least = cost;
            best = static_cast<int>(j);
        }
        if (best == artificial) return;
        enter(best);
    }
}

void Master::enter(int column) {
    ++pivots_;
    work_.assign(rows_, 0.0);
    for (const auto& entry : columns_[static_cast<std::size_t>(column)].entries) {
        for (std::size_t i = 0; i < rows_; ++i) {
            work_[i] += inverse_[i * rows_ + static_cast<std::size_t>(entry.first)] * entry.second;
        }
    }
    std::size_t leaving = rows_;
    double step = 0;
    for (std::size_t i = 0; i < rows_; ++i) {
        if (work_[i] <= tolerance) continue;
        const double ratio = std::max(0.0, values_[i]) / work_[i];
        const bool closer = leaving == rows_ || ratio < step - 1e-12;
        if (!closer && !(ratio <= step + 1e-12 && work_[i] > work_[leaving])) continue;
        step = ratio;
        leaving = i;
    }
    if (leaving == rows_) return;  // costs are not negative, so only rounding leads here
    double* pivot_row = &inverse_[leaving * rows_];
    const double scale = 1.0 / work_[leaving];
    for (std::size_t k = 0; k < rows_; ++k) pivot_row[k] *= scale;
    for (std::size_t i = 0; i < rows_; ++i) {
        if (i == leaving || std::abs(work_[i]) < 1e-13) continue;
        double* row = &inverse_[i * rows_];
        for (std::size_t k = 0; k < rows_; ++k) row[k] -= work_[i] * pivot_row[k];
        values_[i] -= work_[i] * step;
    }
    values_[leaving] = step;
    // The duals move along the pivot row by the reduced cost of the entering column.
    const double reduced = reduced_cost(columns_[static_cast<std::size_t>(column)]);
    for (std::size_t k = 0; k < rows_; ++k) duals_[k] += reduced * pivot_row[k];
    basis_[leaving] = column;
    if (pivots_ % 64 == 0) find_duals();
}

void Master::find_duals() {
    duals_.assign(rows_, 0.0);
    for (std::size_t i = 0; i < rows_; ++i) {
        const double cost = basis_[i] == artificial ? penalty_ : columns_[static_cast<std::size_t>(basis_[i])].cost;
        if (cost == 0) continue;
        for (std::size_t k = 0; k < rows_; ++k) duals_[k] += cost * inverse_[i * rows_ + k];
    }
}

double Master::bar_dual(std::size_t bar) const {
    return row_of_bar_[bar] == artificial ? 0.0 : duals_[static_cast<std::size_t>(row_of_bar_[bar])];
}

double Master::objective() const {
    double sum = 0;
    for (std::size_t i = 0; i < rows_; ++i) {
        sum += values_[i] *
               (basis_[i] == artificial ? penalty_ : columns_[static_cast<std::size_t>(basis_[i])].cost);
    }
    return sum;
}

bool Master::feasible() const {
    for (std::size_t i = 0; i < rows_; ++i) {
        if (basis_[i] == artificial && values_[i] > 1e-4) return false;
    }
    return true;
}

std::vector<double> Master::amounts() const {
    const std::size_t own = columns_.size() - patterns_.size();
    std::vector<double> amounts(patterns_.size(), 0.0);
    for (std::size_t i = 0; i < rows_; ++i) {
        const auto column = static_cast<std::size_t>(std::max(0, basis_[i]));
        if (basis_[i] != artificial && column >= own) amounts[column - own] = values_[i];
    }
    return amounts;
}

}  // namespace rodwright::cutting::linear
