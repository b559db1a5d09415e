// Putting parts in: the other half of Search.
#include <algorithm>
#include <limits>

#include "compiler/stock/cutting/guillotine/search.hpp"

namespace rodwright::cutting::guillotine {
namespace {

// Now and then a place is overlooked, so that parts don't always go where they went.
constexpr int overlooked_mostly = 60;  // one in so many places
constexpr int overlooked_seldom = 3;   // in one step in so many:
constexpr int odds_of_seldom = 12;
constexpr int ways_round_defects = 8;  // tried for a part before giving up
constexpr Amount budget_steps = 2000;

bool fits(const Kind& kind, const Stock& stock) {
    const auto inside = [&](Size size) {
        return size.along[0] <= stock.size.along[0] && size.along[1] <= stock.size.along[1];
    };
    return inside(kind.upright) || (kind.may_turn && inside(kind.turned));
}

}  // namespace

void Search::recreate() {
    choose_order();
    overlooked_ = random_.one_in(odds_of_seldom) ? overlooked_seldom : overlooked_mostly;
    for (const auto& entry : order_) {
        const int part = entry.second;
        while (missing_[at(part)] > 0 && (place(part) || open_for(part))) {
            --missing_[at(part)];
            missing_weight_ -= kinds_.parts[at(part)].weight;
        }
    }
}

// The missing kinds, the large first: by weight, by the longer or by the shorter side, more or less shaken.
void Search::choose_order() {
    order_.clear();
    constexpr std::array<int, 3> shaken = {1, 40, 100};  // by less than so many hundredths
    const int noise = shaken[at(random_.below(3))];
    const int key = random_.below(4);
    for (int part = 0; part < static_cast<int>(missing_.size()); ++part) {
        if (missing_[at(part)] == 0) continue;
        const Kind& kind = kinds_.parts[at(part)];
        Amount rank = kind.weight;
        if (key == 2) rank = std::max(kind.upright.along[0], kind.upright.along[1]);
        if (key == 3) rank = std::min(kind.upright.along[0], kind.upright.along[1]);
        order_.emplace_back(-rank * (100 + random_.below(noise)), part);
    }
    work_ += 20 * static_cast<Amount>(order_.size());
    std::sort(order_.begin(), order_.end());
}

bool Search::place(int part) {
    const Kind& kind = kinds_.parts[at(part)];
    Placing best;
    int best_layout = none;
    best.loss = std::numeric_limits<Amount>::max();
    for (int i = 0; i < static_cast<int>(layouts_.size()); ++i) {
        if (!layouts_[at(i)].in_use()) continue;
        work_ += 2 + static_cast<Amount>(layouts_[at(i)].free().size());
        layouts_[at(i)].for_each_placing(kind, [&](const Placing& placing) {
            if (placing.loss >= best.loss || random_.one_in(overlooked_)) return;
            best = placing;
            best_layout = i;
        });
    }
    if (best_layout == none) return false;
    Layout& layout = change(best_layout);
    worth_ -= layout.worth();
    layout.put(part, best);
    worth_ += layout.worth();
    return true;
}

// Opens one more piece of stock for the part, if the goal allows any.
bool Search::open_for(int part) {
    const int chosen = choose_stock(part);
    if (chosen == none) return false;
    Layout& layout = change(spare_slot());
    const int tries = kinds_.stock[at(chosen)].defects.empty() ? 1 : ways_round_defects;
    Placing best;
    for (int i = 0; i < tries && best.node == none; ++i) {
        layout.open(chosen, random_);
        best = first_placing(layout, part);
    }
    // The rule or the defects may forbid the part although it fits.
    if (best.node == none) {
        layout.close();
        return false;
    }
    --stock_left_[at(chosen)];
    cost_ += kinds_.stock[at(chosen)].cost;
    layout.put(part, best);
    worth_ += layout.worth();
    return true;
}

// Also plans the most weight that a budget buys, about: in steps of cost, as if no stock were limited.
void Search::limit_cost(Amount most) {
    cost_limit_ = most;
    if (kinds_.stock.size() <= 1 || !buys_.empty() || most == std::numeric_limits<Amount>::max()) return;
    budget_step_ = most / budget_steps + 1;
    buys_.assign(static_cast<std::size_t>(most / budget_step_) + 1, 0);
    for (std::size_t budget = 1; budget < buys_.size(); ++budget) {
        for (const Stock& stock : kinds_.stock) {
            const auto cost = static_cast<std::size_t>(std::max<Amount>(1, stock.cost / budget_step_));
            if (cost <= budget) buys_[budget] = std::max(buys_[budget], buys_[budget - cost] + stock.weight);
        }
    }
}

// By chance one of those after which the rest of the budget still buys enough for what is missing; if there
// are none, of those after which it buys most.
int Search::choose_stock(int part) {
    int chosen = none;
    int seen = 0;
    Amount most = 0;
    for (int i = 0; i < static_cast<int>(kinds_.stock.size()); ++i) {
        const Stock& stock = kinds_.stock[at(i)];
        if (stock_left_[at(i)] == 0 || stock.cost > cost_limit_ - cost_ ||
            !fits(kinds_.parts[at(part)], stock)) {
            continue;
        }
        Amount buys = missing_weight_;
        if (!buys_.empty()) {
            const auto rest = static_cast<std::size_t>((cost_limit_ - cost_ - stock.cost) / budget_step_);
            buys = std::min(buys, stock.weight + buys_[rest]);
        }
        if (buys < most) continue;
        if (buys > most) seen = 0;
        most = buys;
        if (random_.one_in(++seen)) chosen = i;
    }
    return chosen;
}

int Search::spare_slot() {
    int slot = 0;
    while (slot < static_cast<int>(layouts_.size()) && layouts_[at(slot)].in_use()) ++slot;
    if (slot == static_cast<int>(layouts_.size())) {
        layouts_.emplace_back(kinds_);
        saved_.emplace_back(kinds_);
        is_changed_.push_back(0);
    }
    return slot;
}

// On an empty piece of stock; finds a place if there is one.
Placing Search::first_placing(const Layout& layout, int part) {
    Placing best;
    layout.for_each_placing(kinds_.parts[at(part)], [&](const Placing& placing) {
        const bool better = best.node == none || placing.loss < best.loss;
        if (better != random_.one_in(overlooked_) || best.node == none) best = placing;
    });
    return best;
}

}  // namespace rodwright::cutting::guillotine
