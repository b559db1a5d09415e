// The linear programme of column generation: patterns that cover the quantities at least cost.
//
//   min sum cost(p) x(p)   with   sum count(p, i) x(p) >= quantity(i),   sum over a bar's p of x(p) <=
//   available(bar)
//
// by the revised simplex method with an explicit inverse (P. Gilmore, R. Gomory, Operations Research 9 (1961)
// 849-859). Its floating-point results only steer; what is claimed is proved in whole numbers elsewhere.
#pragma once

#include <vector>

#include "compiler/stock/cutting/columns/cover.hpp"

namespace rodwright::cutting::columns {

class Master {
  public:
    explicit Master(const Cover& cover);

    void add(const Pattern& pattern);
    // Before the first optimise(): starts from a basis of these patterns as far as it can, not from an empty
    // one.
    void start_from(const std::vector<std::size_t>& patterns);
    void optimise();  // over the patterns added so far

    const std::vector<double>& duals() const { return duals_; }  // of the wanted cover, then of limited bars
    double bar_dual(std::size_t bar) const;                      // of the limit on that bar: <= 0
    double objective() const;                                    // a piece left uncovered costs `penalty`
    bool feasible() const;                                       // none is
    const std::vector<Pattern>& patterns() const { return patterns_; }
    std::vector<double> amounts() const;     // of the patterns
    std::vector<std::size_t> basis() const;  // the patterns in it
    long work() const { return work_; }      // floating-point operations, about

  private:
    static constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

    void add_column(double cost, const std::vector<std::pair<int, double>>& entries);
    double reduced_cost(std::size_t column) const;
    void find_direction(std::size_t column);
    void enter(std::size_t column);
    void pivot(std::size_t row, std::size_t column);
    void make_feasible();
    void find_duals();

    std::size_t rows_ = 0;
    std::vector<double> bar_costs_;
    std::vector<int> row_of_bar_;  // none (-1) for an unlimited one
    std::vector<Pattern> patterns_;
    std::vector<std::size_t> column_of_;  // by pattern
    // Columns, entry by entry: uncovered and surplus pieces of each length, slack of each limit, patterns,
    // and perhaps one of make_feasible() among them.
    std::vector<std::size_t> starts_;
    std::vector<int> entry_rows_;
    std::vector<double> entry_values_;
    std::vector<double> costs_;
    std::vector<std::size_t> pattern_of_;  // by column; `nowhere` for the others
    std::vector<std::size_t> basis_;       // column of each row
    std::vector<double> inverse_;          // rows_ * rows_
    std::vector<double> values_;           // of the basic columns
    std::vector<double> duals_;
    std::vector<double> direction_;
    std::vector<std::size_t> support_;
    double penalty_ = 0;
    long pivots_ = 0;
    long work_ = 0;
};

}  // namespace rodwright::cutting::columns
