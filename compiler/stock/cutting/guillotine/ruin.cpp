// Taking parts out: half of Search.
#include <algorithm>
#include <limits>

#include "compiler/stock/cutting/guillotine/search.hpp"

namespace rodwright::cutting::guillotine {
namespace {

constexpr int most_taken = 15;       // parts in one step, or a few more
constexpr int most_sheets = 20;      // drawn in one step
constexpr int odds_of_new_cuts = 8;  // round the defects of a sheet: one in so many

}  // namespace

// Clears the emptiest pieces of stock.
void Search::shrink_to(Amount cost) {
    while (cost_ > cost) {
        int worst = none;
        for (int i = 0; i < static_cast<int>(layouts_.size()); ++i) {
            const Layout& layout = layouts_[at(i)];
            if (!layout.in_use() || kinds_.stock[at(layout.stock())].cost == 0) continue;
            if (worst == none || layout.filled() < layouts_[at(worst)].filled()) worst = i;
        }
        if (worst == none) return;
        empty_some_of(worst, std::numeric_limits<int>::max());
    }
}

void Search::ruin() {
    int left = 1 + random_.below(most_taken);
    for (int tries = 0; tries < most_sheets && left > 0 && !layouts_.empty(); ++tries) {
        const int index = random_.below(static_cast<int>(layouts_.size()));
        if (!layouts_[at(index)].in_use()) continue;
        const bool all = has_defects(index) && random_.one_in(odds_of_new_cuts);
        empty_some_of(index, all ? std::numeric_limits<int>::max() : 1 + random_.below(left));
        left -= static_cast<int>(taken_.size());
    }
}

// Takes `count` parts or a few more out of the layout: whole nodes of its tree.
void Search::empty_some_of(int index, int count) {
    Layout& layout = change(index);
    worth_ -= layout.worth();
    taken_.clear();
    while (static_cast<int>(taken_.size()) < count && !layout.empty()) {
        const bool all = count == std::numeric_limits<int>::max();
        const int node = all ? 0 : random_.below(static_cast<int>(layout.nodes().size()));
        layout.take(node, taken_);
    }
    worth_ += layout.worth();
    for (const int part : taken_) {
        ++missing_[at(part)];
        missing_weight_ += kinds_.parts[at(part)].weight;
    }
    close_if_empty(index);
}

void Search::close_if_empty(int index) {
    Layout& layout = layouts_[at(index)];
    if (!layout.empty()) return;
    worth_ -= layout.worth();
    cost_ -= kinds_.stock[at(layout.stock())].cost;
    ++stock_left_[at(layout.stock())];
    layout.close();
}

bool Search::has_defects(int layout) const {
    return !kinds_.stock[at(layouts_[at(layout)].stock())].defects.empty();
}

}  // namespace rodwright::cutting::guillotine
