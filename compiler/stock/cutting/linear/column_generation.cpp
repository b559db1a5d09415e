#include "compiler/stock/cutting/linear/column_generation.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include "compiler/stock/cutting/linear/knapsack.hpp"

namespace rodwright::cutting::linear {
namespace {

constexpr long step_limit = 300'000;
constexpr long operations_of_step = 20;
constexpr std::size_t most_new = 8;  // patterns added for a bar in one round

// The patterns of negative reduced cost that one search meets, the best of them last.
std::vector<Pattern> improving_patterns(const Cover& cover, const Master& master, int bar, long& work) {
    const Bar& stock = cover.bars[static_cast<std::size_t>(bar)];
    const double floor = static_cast<double>(stock.cost) - master.bar_dual(static_cast<std::size_t>(bar));
    const std::vector<double> values(master.duals().begin(),
                                     master.duals().begin() + static_cast<long>(cover.wanted.size()));
    std::vector<Pattern> found;
    const auto keep = [&](double value, const std::vector<Pattern::Entry>& entries) {
        found.push_back({bar, entries});
        return value;
    };
    work += operations_of_step *
            valuable_patterns(cover.wanted, values, stock.length, floor * (1 + 1e-7), step_limit, keep);
    if (found.size() > most_new) found.erase(found.begin(), found.end() - static_cast<long>(most_new));
    return found;
}

// The most that duals can be scaled by so that no pattern of a bar without limit is worth more than it costs.
double safe_scale(const Cover& cover, const std::vector<Amount>& greatest, Amount unit) {
    double scale = 1;
    for (std::size_t bar = 0; bar < cover.bars.size(); ++bar) {
        const Amount cost = cover.bars[bar].cost * unit;
        if (cover.bars[bar].limited || greatest[bar] <= cost) continue;
        scale = std::min(scale, static_cast<double>(cost) / static_cast<double>(greatest[bar]) * (1 - 1e-13));
    }
    return scale;
}

}  // namespace

long generate_columns(const Cover& cover, Master& master, std::vector<Pattern>& pool) {
    const long before = master.work();
    long work = 0;
    while (true) {
        master.optimise();
        bool any = false;
        for (int bar = 0; bar < static_cast<int>(cover.bars.size()); ++bar) {
            if (cover.bars[static_cast<std::size_t>(bar)].available == 0) continue;
            for (const Pattern& pattern : improving_patterns(cover, master, bar, work)) {
                master.add(pattern);
                pool.push_back(pattern);
                any = true;
            }
        }
        if (!any) return work + master.work() - before;
    }
}

std::vector<Pattern> first_fit(const Cover& cover) {
    std::vector<Pattern> patterns;
    for (int bar = 0; bar < static_cast<int>(cover.bars.size()); ++bar) {
        std::vector<Wanted> left = cover.wanted;
        while (true) {
            Pattern pattern{bar, {}};
            int room = cover.bars[static_cast<std::size_t>(bar)].length;
            for (std::size_t i = 0; i < left.size(); ++i) {
                const int count = std::min(left[i].quantity, room / left[i].length);
                if (count == 0) continue;
                left[i].quantity -= count;
                room -= count * left[i].length;
                pattern.entries.push_back({static_cast<int>(i), count});
            }
            if (pattern.entries.empty()) break;
            patterns.push_back(std::move(pattern));
        }
    }
    return patterns;
}

Amount proved_bound(const Cover& cover, const Master& master) {
    Amount dearest = 1;
    Amount divisor = 0;
    Amount pieces = 1;
    for (const Bar& bar : cover.bars) {
        dearest = std::max(dearest, bar.cost);
        divisor = std::gcd(divisor, bar.cost);
    }
    for (const Wanted& wanted : cover.wanted) pieces += wanted.quantity;
    if (divisor == 0) return 0;
    // Sums of duals stay below 2^61.
    Amount unit = 1;
    while (unit < (Amount{1} << 36) && dearest * pieces < (Amount{1} << 60) / unit) unit *= 2;

    std::vector<Amount> values;
    for (std::size_t i = 0; i < cover.wanted.size(); ++i) {
        const double dual = std::clamp(master.duals()[i], 0.0, static_cast<double>(dearest));
        values.push_back(static_cast<Amount>(dual * static_cast<double>(unit)));
    }
    const double scale = safe_scale(cover, greatest_values(cover, values), unit);
    for (Amount& value : values) value = static_cast<Amount>(static_cast<double>(value) * scale);
    const std::vector<Amount> greatest = greatest_values(cover, values);
    Amount bound = 0;
    for (std::size_t i = 0; i < values.size(); ++i) bound += values[i] * cover.wanted[i].quantity;
    for (std::size_t bar = 0; bar < cover.bars.size(); ++bar) {
        const Amount excess = greatest[bar] - cover.bars[bar].cost * unit;
        if (excess <= 0) continue;
        if (!cover.bars[bar].limited) return 0;
        bound -= excess * cover.bars[bar].available;
    }
    const Amount step = divisor * unit;
    return std::max<Amount>(0, (bound + step - 1) / step * divisor);
}

}  // namespace rodwright::cutting::linear
