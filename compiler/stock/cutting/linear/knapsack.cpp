#include "compiler/stock/cutting/linear/knapsack.hpp"

#include <algorithm>
#include <numeric>

namespace rodwright::cutting::linear {
namespace {

std::size_t at(int index) {
    return static_cast<std::size_t>(index);
}

struct Item {
    int wanted = 0;
    int length = 0;
    int quantity = 0;
    double value = 0;
    int shortest_behind = 0;  // the shortest length of this and all later items
};

std::vector<Item> by_value(const std::vector<Wanted>& wanted, const std::vector<double>& values) {
    std::vector<Item> items;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
        if (wanted[i].quantity == 0) continue;
        items.push_back(
            {static_cast<int>(i), wanted[i].length, wanted[i].quantity, std::max(0.0, values[i]), 0});
    }
    std::stable_sort(items.begin(), items.end(),
                     [](const Item& a, const Item& b) { return a.value * b.length > b.value * a.length; });
    int shortest = max_size * 2;
    for (std::size_t i = items.size(); i-- > 0;) {
        shortest = std::min(shortest, items[i].length);
        items[i].shortest_behind = shortest;
    }
    return items;
}

class DepthFirst {
  public:
    DepthFirst(const std::vector<Item>& items, double floor, long step_limit, const FoundPattern& found)
        : items_(items), floor_(floor), steps_left_(step_limit), found_(found) {}

    long run(int length) {
        const long before = steps_left_;
        descend(0, length, 0);
        return before - steps_left_;
    }

  private:
    // Takes items from index `from` on into the rest of the bar. Each level of the recursion takes one kind.
    void descend(std::size_t from, int rest, double value) {
        if (value > floor_ + 1e-9) floor_ = found_(value, chosen_);
        for (std::size_t i = from; i < items_.size(); ++i) {
            const Item& item = items_[i];
            if (rest < item.shortest_behind) return;
            if (value + item.value / item.length * rest <= floor_ + 1e-9) return;
            if (item.length > rest) continue;
            if (--steps_left_ <= 0) return;
            for (int count = std::min(item.quantity, rest / item.length); count > 0; --count) {
                chosen_.push_back({item.wanted, count});
                descend(i + 1, rest - count * item.length, value + count * item.value);
                chosen_.pop_back();
                if (steps_left_ <= 0) return;
            }
        }
    }

    const std::vector<Item>& items_;
    double floor_;
    long steps_left_;
    const FoundPattern& found_;
    std::vector<Pattern::Entry> chosen_;
};

}  // namespace

long valuable_patterns(const std::vector<Wanted>& wanted, const std::vector<double>& values, int bar_length,
                       double floor, long step_limit, const FoundPattern& found) {
    const std::vector<Item> items = by_value(wanted, values);
    return DepthFirst(items, floor, step_limit, found).run(bar_length);
}

std::vector<Amount> greatest_values(const Cover& cover, const std::vector<Amount>& values) {
    int longest = 0;
    for (const Bar& bar : cover.bars) longest = std::max(longest, bar.length);
    std::vector<Amount> best(at(longest) + 1, 0);
    for (std::size_t i = 0; i < cover.wanted.size(); ++i) {
        // Bundles of 1, 2, 4, ... make up every count up to the quantity.
        const int length = cover.wanted[i].length;
        int left = std::min(cover.wanted[i].quantity, longest / length);
        for (int bundle = 1; left > 0 && values[i] > 0; bundle *= 2) {
            const int count = std::min(bundle, left);
            left -= count;
            const std::size_t size = at(length) * at(count);
            for (std::size_t end = best.size(); end-- > size;) {
                best[end] = std::max(best[end], best[end - size] + values[i] * count);
            }
        }
    }
    std::vector<Amount> result;
    for (const Bar& bar : cover.bars) result.push_back(best[at(bar.length)]);
    return result;
}

}  // namespace rodwright::cutting::linear
