#include "compiler/stock/cutting/guillotine/search.hpp"

#include <algorithm>
#include <cstdlib>
#include <limits>
#include <cmath>

namespace rodwright::cutting::guillotine {
namespace {

constexpr int ways_round_defects = 8;  // tried for a part before giving up

std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

int env(const char* n, int d) { const char* s = std::getenv(n); return s ? std::atoi(s) : d; }
const int kHistory = env("HIST", 500);
const int kRemove = env("REM", 8);
const int kBlink = env("BLINK", 60);
const int kLambda = env("LAMBDA", 100);
const int kOrder = env("ORDER", 0);
const int kSA = env("SA", 3000), kT1 = env("T1", 300);
const int kOpen = env("OPEN", 50);
const int kMode = env("MODE", 0);

}  // namespace

Search::Search(const Kinds& kinds, std::uint64_t seed)
    : kinds_(kinds), random_(seed), missing_(kinds.parts.size(), 0) {
    for (const Stock& piece : kinds.stock) stock_left_.push_back(piece.available);
    for (std::size_t i = 0; i < kinds.parts.size(); ++i) {
        missing_[i] = kinds.parts[i].quantity;
        missing_weight_ += kinds.parts[i].weight * kinds.parts[i].quantity;
    }
}

void Search::construct() {
    limit_ = std::numeric_limits<Amount>::max();
    recreate();
    accept();
}

bool Search::adopt(const Layout& layout) {
    if (stock_left_[at(layout.stock())] == 0) return false;
    std::vector<int> missing = missing_;
    for (const Node& node : layout.nodes()) {
        if (node.is_part() && --missing[at(node.part)] < 0) return false;
    }
    missing_ = missing;
    missing_weight_ -= layout.filled();
    worth_ += layout.worth();
    cost_ += kinds_.stock[at(layout.stock())].cost;
    --stock_left_[at(layout.stock())];
    layouts_[at(spare_slot())] = layout;
    return true;
}

void Search::fill_one(Layout& best, Amount work) {
    construct();
    work_limit_ = work;
    if (layouts_.empty()) return;
    best = layouts_[0];
    while (!complete() && work_ < work) {
        step();
        if (layouts_[0].filled() > best.filled()) best = layouts_[0];
    }
}

Amount Search::energy() const {
    return missing_weight_ - worth_ * kLambda / 1000;
}

bool Search::reach(Amount cost, Amount limit) {
    limit_ = cost;
    shrink_to(cost);
    accept();
    work_limit_ = limit;
    history_.assign(at(kHistory), energy());
    moment_ = 0;
    while (!complete() && work_ < limit) step();
    return complete();
}

// Clears the emptiest pieces of stock.
void Search::shrink_to(Amount cost) {
    while (cost_ > cost) {
        int worst = none;
        for (int i = 0; i < static_cast<int>(layouts_.size()); ++i) {
            const Layout& layout = layouts_[at(i)];
            if (!layout.in_use() || kinds_.stock[at(layout.stock())].cost == 0) continue;
            if (worst == none || layout.filled() < layouts_[at(worst)].filled()) worst = i;
        }
        taken_.clear();
        Layout& layout = change(worst);
        worth_ -= layout.worth();
        layout.take(0, taken_);
        worth_ += layout.worth();
        for (const int part : taken_) {
            ++missing_[at(part)];
            missing_weight_ += kinds_.parts[at(part)].weight;
        }
        close_if_empty(worst);
    }
    recreate();
}

void Search::step() {
    work_ += 100;
    energy_before_ = energy();
    missing_before_ = missing_;
    ruin();
    recreate();
    const Amount now = energy();
    Amount& past = history_[moment_];
    moment_ = moment_ + 1 == history_.size() ? 0 : moment_ + 1;
    if (kSA > 0) {
        // temperature from T0 to T1 over work
        const Amount unit = kinds_.stock[0].weight;
        const double f = std::min(1.0, double(work_) / double(work_limit_));
        const double T = double(unit) * 1e-6 * std::pow(10.0, std::log10(double(kSA)) * (1 - f) + std::log10(double(kT1)) * f);
        const double u = double(random_.next() >> 11) * 0x1p-53;
        if (double(now - energy_before_) <= -T * std::log(u + 1e-300)) accept(); else revert();
        return;
    }
    if (now <= energy_before_ || now < past) {
        past = now;
        accept();
    } else {
        revert();
        past = std::min(past,energy_before_);
    }
}

void Search::accept() {
    for (const int layout : changed_) is_changed_[at(layout)] = 0;
    changed_.clear();
}

void Search::revert() {
    for (const int index : changed_) {
        Layout& now = layouts_[at(index)];
        Layout& before = saved_[at(index)];
        if (now.in_use()) {
            worth_ -= now.worth();
            cost_ -= kinds_.stock[at(now.stock())].cost;
            ++stock_left_[at(now.stock())];
        }
        std::swap(now, before);
        if (now.in_use()) {
            worth_ += now.worth();
            cost_ += kinds_.stock[at(now.stock())].cost;
            --stock_left_[at(now.stock())];
        }
    }
    accept();
    missing_ = missing_before_;
    missing_weight_ = 0;
    for (std::size_t i = 0; i < missing_.size(); ++i) missing_weight_ += kinds_.parts[i].weight * missing_[i];
}

Layout& Search::change(int layout) {
    if (is_changed_[at(layout)] == 0) {
        is_changed_[at(layout)] = 1;
        changed_.push_back(layout);
        saved_[at(layout)] = layouts_[at(layout)];
        work_ += static_cast<Amount>(layouts_[at(layout)].nodes().size());
    }
    return layouts_[at(layout)];
}

void Search::close_if_empty(int index) {
    Layout& layout = layouts_[at(index)];
    if (!layout.empty()) return;
    worth_ -= layout.worth();
    cost_ -= kinds_.stock[at(layout.stock())].cost;
    ++stock_left_[at(layout.stock())];
    layout.close();
}

void Search::ruin() {
    const int count = 1 + random_.below(2 * kRemove - 1);
    int left = count;
    for (int tries = 0; tries < 20 && left > 0; ++tries) {
        const int index = random_.below(static_cast<int>(layouts_.size()));
        if (!layouts_[at(index)].in_use()) continue;
        taken_.clear();
        if (has_defects(index) && random_.one_in(8)) {
            ruin_some_of(index, std::numeric_limits<int>::max());
        } else
        if (kMode == 0)
        ruin_some_of(index, 1 + random_.below(left));
        else if (kMode == 1) ruin_some_of(index, left);
        else ruin_some_of(index, 1);
        left -= static_cast<int>(taken_.size());
        for (const int part : taken_) {
            ++missing_[at(part)];
            missing_weight_ += kinds_.parts[at(part)].weight;
        }
    }
}

bool Search::has_defects(int layout) const {
    return !kinds_.stock[at(layouts_[at(layout)].stock())].defects.empty();
}

// Takes `count` parts or a few more out of the layout: whole nodes of its tree.
void Search::ruin_some_of(int index, int count) {
    Layout& layout = change(index);
    worth_ -= layout.worth();
    while (static_cast<int>(taken_.size()) < count && !layout.empty()) {
        const int node = random_.below(static_cast<int>(layout.nodes().size()));
        const Node& chosen = layout.nodes()[at(node)];
        if (!chosen.is_part() && chosen.child == none) continue;
        layout.take(node, taken_);
    }
    worth_ += layout.worth();
    close_if_empty(index);
}

void Search::recreate() {
    order_.clear();
    const int noise = random_.below(3);
    const int key = kOrder ? kOrder - 1 : random_.below(4);
    for (int part = 0; part < static_cast<int>(missing_.size()); ++part) {
        if (missing_[at(part)] == 0) continue;
        const Kind& kind = kinds_.parts[at(part)];
        Amount rank = 0;
        if (key <= 1) rank = kind.weight;
        if (key == 2) rank = std::max(kind.size.along[0], kind.size.along[1]);
        if (key == 3) rank = std::min(kind.size.along[0], kind.size.along[1]);
        if (noise > 0) rank = rank * (100 + random_.below(noise == 1 ? 40 : 100)) / 100;
        order_.push_back({-rank, part});
    }
    std::sort(order_.begin(), order_.end());
    for (const auto& entry : order_) {
        while (missing_[at(entry.second)] > 0 && (place(entry.second) || open_for(entry.second))) {
            --missing_[at(entry.second)];
            missing_weight_ -= kinds_.parts[at(entry.second)].weight;
        }
    }
}

// Puts a part where it costs least, now and then overlooking a place.
bool Search::place(int part) {
    const Kind& kind = kinds_.parts[at(part)];
    Placing best;
    int best_layout = none;
    Amount best_loss = std::numeric_limits<Amount>::max();
    for (int i = 0; i < static_cast<int>(layouts_.size()); ++i) {
        if (!layouts_[at(i)].in_use()) continue;
        work_ += 2 + static_cast<Amount>(layouts_[at(i)].free().size());
        layouts_[at(i)].for_each_placing(kind, [&](const Placing& placing) {
            if (placing.loss >= best_loss || random_.one_in(kBlink)) return;
            best_loss = placing.loss;
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

bool Search::fits(const Kind& kind, const Stock& stock) const {
    const auto inside = [&](Size size) {
        return size.along[0] <= stock.size.along[0] && size.along[1] <= stock.size.along[1];
    };
    return inside(kind.size) || (kind.may_turn && inside(kind.size.turned()));
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

// Opens one more piece of stock for the part, if the goal allows any.
bool Search::open_for(int part) {
    int chosen = none;
    int seen = 0;
    const bool greedy = random_.below(100) < kOpen;
    Amount use_best = 1, chosen_cost = 0;
    for (int i = 0; i < static_cast<int>(kinds_.stock.size()); ++i) {
        const Stock& stock = kinds_.stock[at(i)];
        if (stock_left_[at(i)] == 0 || stock.cost > limit_ - cost_ || !fits(kinds_.parts[at(part)], stock)) continue;
        ++seen;
        if (greedy) {
            // least cost per useful area
            const Amount use_i = std::min(stock.weight, missing_weight_);
            if (chosen == none || stock.cost * use_best < chosen_cost * use_i) { chosen = i; use_best = use_i; chosen_cost = stock.cost; }
        } else
        if (random_.one_in(seen)) chosen = i;
    }
    if (chosen == none) return false;
    const int slot = spare_slot();
    Layout& layout = change(slot);
    const int tries = kinds_.stock[at(chosen)].defects.empty() ? 1 : ways_round_defects;
    Placing best;
    for (int i = 0; i < tries && best.node == none; ++i) {
        layout.open(chosen, random_);
        best = best_placing(layout, part);
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

Placing Search::best_placing(const Layout& layout, int part) const {
    Placing best;
    best.loss = std::numeric_limits<Amount>::max();
    layout.for_each_placing(kinds_.parts[at(part)], [&](const Placing& placing) {
        if (placing.loss < best.loss) best = placing;
    });
    return best;
}

}  // namespace rodwright::cutting::guillotine
