// A problem as the search sees it: without kerf, and with areas in units that squares of them fit into an
// Amount.
//
// Adding the kerf to the sizes of every part and of every stock piece turns cuts with a kerf into cuts
// without one: a + kerf + b is cut into a and b exactly where (a + kerf) + (b + kerf) is without loss. Each
// axis has a kerf of its own, so a turned part is not the upright one with its sizes exchanged.
#pragma once

#include <algorithm>
#include <vector>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting::guillotine {

struct Kind {
    Size upright;
    Size turned;
    int quantity = 0;
    bool may_turn = false;  // and is no square
    bool one_face = false;  // one face without defects is enough
    Amount weight = 0;      // its area in the search's units

    Size size(bool is_turned) const { return is_turned ? turned : upright; }
    Amount least_area() const { return may_turn ? std::min(upright.area(), turned.area()) : upright.area(); }
};

struct Stock {
    Size size;
    int available = 0;
    Amount cost = 0;
    Amount weight = 0;
    std::vector<Defect> defects;  // without kerf
};

struct Kinds {
    explicit Kinds(const Problem& problem);

    // The same with one piece of that stock only, other quantities (as far as they fit) and other weights.
    Kinds for_one_sheet(int piece, const std::vector<int>& quantities,
                        const std::vector<Amount>& weights) const;

    // The same where free rectangles are worth what they are as leftovers: those of a useful size, without
    // the kerf.
    Kinds for_leftovers() const;

    std::vector<Kind> parts;  // one for each of Problem::parts, in their order
    std::vector<Stock> stock;
    CutRule rule;
    Size kerf;
    bool leftovers = false;  // see for_leftovers

    Size least_part() const { return least_part_; }
    bool may_hold_a_part(Size free) const { return free.reaches(least_part_); }
    bool any_one_face() const { return any_one_face_; }  // of the parts
    // Whether the rule has nothing against any cut.
    bool may_be_cut_anyhow() const { return any_cut_; }
    // Whether the rule allows a cut that divides the axis of a rectangle, a kerf added to it and to what
    // comes off.
    bool may_be_cut(Size whole, Axis divided, int off) const {
        const int side = std::max(off, whole[divided] - off) - kerf[divided];
        return rule.lets_hold(divided, whole[other(divided)] - kerf[other(divided)], side);
    }
    // How much a free rectangle is worth: the square of its area over the largest stock piece's area, so that
    // one large rectangle is worth more than many small ones; nothing if it is too small to count.
    Amount worth(Size free) const {
        if (!free.reaches(least_worth_)) return 0;
        const Size counted{{free.along[0] - not_worth_.along[0], free.along[1] - not_worth_.along[1]}};
        const auto weight = static_cast<double>(weight_of(counted.area()));
        return static_cast<Amount>(weight * weight * per_unit_);
    }
    Amount weight_of(Amount area) const { return (area << up_) >> down_; }
    Amount largest_weight() const { return unit_; }  // of the largest stock piece

  private:
    Size least_part_;  // no part is smaller than this, along either axis
    Size least_useful_;
    Size least_worth_;
    bool any_cut_ = true;
    bool any_one_face_ = false;
    Size not_worth_;  // what a free rectangle's sizes are more than what counts
    int up_ = 0;
    int down_ = 0;
    Amount unit_ = 1;
    double per_unit_ = 1;  // 1 / unit_
};

}  // namespace rodwright::cutting::guillotine
