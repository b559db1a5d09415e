#include "compiler/stock/cutting/guillotine/search.hpp"

#include <algorithm>
#include <bit>
#include <limits>

namespace rodwright::cutting::guillotine {
namespace {

// Measured on the classes of the literature, with the odds in ruin.cpp and recreate.cpp.
constexpr Amount worth_share = 10;        // free rectangles count a tenth of missing parts
constexpr Amount missing_counts = 4;      // and a missing part so many times where all are in already
constexpr Amount coldest = 3300;          // the last temperature: the largest sheet's weight over this
constexpr Amount octaves_of_cooling = 3;  // the first is 2^3 times as high
constexpr Amount one = 1024;

}  // namespace

Search::Search(const Kinds& kinds, std::uint64_t seed)
    : kinds_(kinds), random_(seed), missing_(kinds.parts.size(), 0) {
    for (const Stock& piece : kinds.stock) stock_left_.push_back(piece.available);
    for (std::size_t i = 0; i < kinds.parts.size(); ++i) {
        missing_[i] = kinds.parts[i].quantity;
        missing_weight_ += kinds.parts[i].weight * kinds.parts[i].quantity;
    }
}

bool Search::adopt(const Layout& layout) {
    if (stock_left_[at(layout.stock())] == 0) return false;
    std::vector<int> missing = missing_;
    for (const Node& node : layout.nodes()) {
        if (node.is_part() && --missing[at(node.part)] < 0) return false;
    }
    missing_ = std::move(missing);
    missing_weight_ -= layout.filled();
    worth_ += layout.worth();
    cost_ += kinds_.stock[at(layout.stock())].cost;
    --stock_left_[at(layout.stock())];
    layouts_[at(spare_slot())] = layout;
    return true;
}

void Search::construct() {
    cost_limit_ = std::numeric_limits<Amount>::max();
    buys_.clear();
    recreate();
    accept();
}

bool Search::reach(Amount cost, Amount limit) {
    limit_cost(cost);
    shrink_to(cost);
    recreate();
    accept();
    while (!complete() && work_ < limit) step(limit);
    return complete();
}

void Search::fill_one(Layout& best, Amount limit) {
    construct();
    if (layouts_.empty()) return;
    best = layouts_[0];
    while (!complete() && work_ < limit) {
        step(limit);
        if (layouts_[0].filled() > best.filled()) best = layouts_[0];
    }
}

std::vector<Layout> Search::leave_large(Amount limit) {
    limit_cost(cost_);
    std::vector<Layout> best = layouts_;
    Amount worth = worth_;
    while (work_ < limit) {
        step(limit);
        if (!complete() || std::make_pair(cost_, -worth_) >= std::make_pair(cost_limit_, -worth)) continue;
        limit_cost(cost_);
        worth = worth_;
        best = layouts_;
        for (const Layout& layout : best) work_ += static_cast<Amount>(layout.nodes().size());
    }
    return best;
}

void Search::step(Amount limit) {
    work_ += 250;
    const Amount before = energy();
    missing_before_ = missing_;
    ruin();
    recreate();
    if (energy() <= before + tolerance(limit)) {
        accept();
    } else {
        revert();
    }
}

Amount Search::energy() const {
    if (kinds_.leftovers) return missing_counts * missing_weight_ - worth_;
    return missing_weight_ - worth_ / worth_share;
}

// How much worse is accepted: the temperature, which falls by octaves as the work is done, times the negative
// logarithm of a uniform number.
Amount Search::tolerance(Amount limit) {
    const Amount unit = std::max<Amount>(1, kinds_.largest_weight() / coldest);
    const Amount left = limit > work_ ? (limit - work_) / (limit / one + 1) : 0;
    const Amount height = std::min(left, one) * octaves_of_cooling;
    const Amount temperature = (unit << (height / one)) * (one + height % one) / one;
    const std::uint64_t number = random_.next() | 1U;
    const int zeros = std::countl_zero(number);
    const auto fraction = static_cast<Amount>((number << zeros >> 53U) % one);  // behind the leading one
    const Amount logarithm = (zeros + 1) * one - fraction;                      // to base 2
    return temperature * logarithm / one * 7 / 10;
}

void Search::accept() {
    for (const int layout : changed_) is_changed_[at(layout)] = 0;
    changed_.clear();
}

void Search::revert() {
    const auto account = [&](const Layout& layout, int sign) {
        if (!layout.in_use()) return;
        worth_ += sign * layout.worth();
        cost_ += sign * kinds_.stock[at(layout.stock())].cost;
        stock_left_[at(layout.stock())] -= sign;
    };
    for (const int index : changed_) {
        account(layouts_[at(index)], -1);
        std::swap(layouts_[at(index)], saved_[at(index)]);
        account(layouts_[at(index)], 1);
    }
    accept();
    missing_ = missing_before_;
    missing_weight_ = 0;
    for (std::size_t i = 0; i < missing_.size(); ++i) missing_weight_ += kinds_.parts[i].weight * missing_[i];
}

// Every layout is saved before a step changes it.
Layout& Search::change(int layout) {
    if (is_changed_[at(layout)] == 0) {
        is_changed_[at(layout)] = 1;
        changed_.push_back(layout);
        saved_[at(layout)] = layouts_[at(layout)];
        work_ += static_cast<Amount>(layouts_[at(layout)].nodes().size());
    }
    return layouts_[at(layout)];
}

}  // namespace rodwright::cutting::guillotine
