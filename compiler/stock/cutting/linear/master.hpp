// The linear programme of column generation: patterns that cover the quantities at least cost.
//
//   min sum cost(p) x(p)   with   sum count(p, i) x(p) >= quantity(i),   sum over a bar's p of x(p) <= available(bar)
//
// by the revised simplex method with an explicit inverse (P. Gilmore, R. Gomory, Operations Research 9 (1961)
// 849-859). Its floating-point results only steer; what is claimed is proved in whole numbers elsewhere.
#pragma once

#include <vector>

#include "compiler/stock/cutting/linear/lengths.hpp"

namespace rodwright::cutting::linear {

class Master {
  public:
    explicit Master(const Lengths& lengths);

    void add(const Pattern& pattern);
    void optimise();  // over the patterns added so far

    const std::vector<double>& duals() const { return duals_; }  // of the wanted lengths
    double bar_dual(std::size_t bar) const;                      // of the limit on that bar: <= 0
    double objective() const;
    bool feasible() const;  // no quantity is left uncovered
    // The patterns with their amounts, by the order in which they were added.
    const std::vector<Pattern>& patterns() const { return patterns_; }
    std::vector<double> amounts() const;
    long pivots() const { return pivots_; }

  private:
    struct Column {
        double cost = 0;
        std::vector<std::pair<int, double>> entries;
    };

    double reduced_cost(const Column& column) const;
    void enter(int column);
    void find_duals();

    const Lengths& lengths_;
    std::size_t rows_ = 0;
    std::vector<int> row_of_bar_;
    std::vector<Pattern> patterns_;
    std::vector<Column> columns_;  // surplus and slack of each row, then the patterns'
    std::vector<int> basis_;       // column of each row; none (-1) for the artificial one
    std::vector<double> inverse_;  // rows_ * rows_
    std::vector<double> values_;   // of the basic columns
    std::vector<double> duals_;
    std::vector<double> work_;
    double penalty_ = 0;  // for each piece uncovered
    long pivots_ = 0;
};

}  // namespace rodwright::cutting::linear
