// Ruin and recreate: parts are taken out of a few sheets and put back where they cost least, again and again, under
// a goal that the present layouts do not yet meet: all parts on stock of a given cost.
//
// The scheme follows G. Schrimpf et al., J. Computational Physics 159 (2000) 139-171 (ruin and recreate), and
// J. Gardeyn, T. Wauters, EJOR 301 (2022) 432-444 (a goal on the sheets, free rectangles valued by the square of
// their area); what is accepted, late acceptance: E. Burke, Y. Bykov, EJOR 258 (2017) 70-78.
#pragma once

#include <vector>

#include "compiler/stock/cutting/guillotine/layout.hpp"
#include "compiler/stock/cutting/random.hpp"

namespace rodwright::cutting::guillotine {

class Search {
  public:
    Search(const Kinds& kinds, std::uint64_t seed);

    // Takes over a layout made for these kinds; false if its stock or parts are used up.
    bool adopt(const Layout& layout);
    // For kinds with one sheet: the layout of greatest weight that `work` finds.
    void fill_one(Layout& best, Amount work);
    // Fills pieces of stock one after the other until all parts are in or no stock is left.
    void construct();
    // Tries to bring all parts into stock of at most that cost; true if it did. Gives up when work() is at `limit`.
    bool reach(Amount cost, Amount limit);
    Amount work() const { return work_; }  // done so far: free rectangles looked at, about

    Amount cost() const { return cost_; }
    bool complete() const { return missing_weight_ == 0; }
    const std::vector<Layout>& layouts() const { return layouts_; }
    const std::vector<int>& missing() const { return missing_; }  // by part kind

  private:
    void shrink_to(Amount cost);
    void step();
    void ruin();
    void ruin_some_of(int layout, int count);
    void recreate();
    bool place(int part);
    bool open_for(int part);
    Placing best_placing(const Layout& layout, int part) const;
    bool has_defects(int layout) const;
    bool fits(const Kind& kind, const Stock& stock) const;
    int spare_slot();
    Layout& change(int layout);
    void close_if_empty(int layout);
    Amount energy() const;
    void accept();
    void revert();

    const Kinds& kinds_;
    Random random_;
    std::vector<Layout> layouts_;
    std::vector<int> missing_;
    std::vector<int> stock_left_;
    Amount missing_weight_ = 0;
    Amount worth_ = 0;
    Amount cost_ = 0;
    Amount limit_ = 0;  // on cost_
    Amount work_ = 0;
    Amount work_limit_ = 1;

    // What a rejected step goes back to.
    std::vector<Layout> saved_;
    std::vector<int> changed_;
    std::vector<char> is_changed_;
    std::vector<int> missing_before_;
    Amount energy_before_ = 0;

    std::vector<Amount> history_;  // of energies
    std::size_t moment_ = 0;
    std::vector<int> taken_;
    std::vector<std::pair<Amount, int>> order_;
};

}  // namespace rodwright::cutting::guillotine
