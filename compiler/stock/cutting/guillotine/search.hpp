// Ruin and recreate: parts are taken out of a few sheets and put back where they cost least, again and again,
// under a goal that the present layouts do not yet meet: all parts on stock of a given cost.
//
// The scheme follows G. Schrimpf et al., J. Computational Physics 159 (2000) 139-171 (ruin and recreate), and
// J. Gardeyn, T. Wauters, EJOR 301 (2022) 432-444 (a goal on the sheets, free rectangles valued by the square
// of their area). What makes things worse is accepted as in simulated annealing (S. Kirkpatrick et al.,
// Science 220 (1983) 671-680).
#pragma once

#include <utility>
#include <vector>

#include "compiler/stock/cutting/guillotine/layout.hpp"
#include "compiler/stock/cutting/random.hpp"

namespace rodwright::cutting::guillotine {

class Search {
  public:
    Search(const Kinds& kinds, std::uint64_t seed);

    // Takes over a layout made for these kinds; false if its stock or parts are used up.
    bool adopt(const Layout& layout);
    // Fills pieces of stock one after the other until all parts are in or no stock is left.
    void construct();
    // Tries to bring all parts into stock of at most that cost; true if it did. Gives up when work() is at
    // `limit`.
    bool reach(Amount cost, Amount limit);
    // For kinds with one sheet: the layout of greatest weight that is met until work() is at `limit`.
    void fill_one(Layout& best, Amount limit);
    // From complete layouts: those of no more cost with the greatest worth of free rectangles that are met
    // until work() is at `limit`.
    std::vector<Layout> leave_large(Amount limit);

    Amount work() const { return work_; }  // done so far: free rectangles looked at, about
    Amount cost() const { return cost_; }
    bool complete() const { return missing_weight_ == 0; }
    Amount missing_weight() const { return missing_weight_; }
    const std::vector<Layout>& layouts() const { return layouts_; }
    const std::vector<int>& missing() const { return missing_; }  // by part kind

  private:
    // One step, and what is accepted.
    void step(Amount limit);
    Amount energy() const;
    Amount tolerance(Amount limit);
    void accept();
    void revert();
    Layout& change(int layout);

    // Ruin.
    void shrink_to(Amount cost);
    void ruin();
    void empty_some_of(int layout, int count);
    void close_if_empty(int layout);
    bool has_defects(int layout) const;

    // Recreate.
    void recreate();
    void choose_order();
    bool place(int part);
    bool open_for(int part);
    int choose_stock(int part);
    void limit_cost(Amount cost);
    int spare_slot();
    Placing first_placing(const Layout& layout, int part);

    const Kinds& kinds_;
    Random random_;
    std::vector<Layout> layouts_;
    std::vector<int> missing_;
    std::vector<int> stock_left_;
    Amount missing_weight_ = 0;
    Amount worth_ = 0;  // of all layouts' free rectangles
    Amount cost_ = 0;
    Amount cost_limit_ = 0;
    Amount work_ = 0;

    // What a rejected step goes back to.
    std::vector<Layout> saved_;
    std::vector<int> changed_;
    std::vector<char> is_changed_;
    std::vector<int> missing_before_;

    // What a budget buys at most, by its steps.
    std::vector<Amount> buys_;
    Amount budget_step_ = 1;

    int overlooked_ = 60;  // one in so many places, when a part is put in
    std::vector<int> taken_;
    std::vector<std::pair<Amount, int>> order_;
};

}  // namespace rodwright::cutting::guillotine
