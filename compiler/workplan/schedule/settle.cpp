#include "compiler/workplan/schedule/settle.hpp"

#include <utility>

namespace rodwright::schedule {
namespace {

Figures figures_in(const Network& network, Seconds enough, const std::vector<std::size_t>& order) {
    Progress progress(network, enough);
    for (const std::size_t task : order) progress.take(network, progress.place(network, task));
    return progress.figures();
}

}  // namespace

std::vector<std::size_t> settle(const Network& network, Seconds enough, std::vector<std::size_t> order) {
    constexpr int rounds = 12;
    constexpr std::size_t most_tasks = 250;  // a round looks at every pair of tasks
    if (order.size() < 2 || order.size() > most_tasks) return order;
    Figures best = figures_in(network, enough, order);
    bool changed = true;
    for (int round = 0; changed && round < rounds; ++round) {
        changed = false;
        for (std::size_t i = 0; i + 1 < order.size(); ++i) {
            // Tasks are numbered in natural order.
            if (order[i] < order[i + 1] || network.precedes(order[i], order[i + 1])) continue;
            std::swap(order[i], order[i + 1]);
            const Figures figures = figures_in(network, enough, order);
            if (figures <= best) {
                best = figures;
                changed = true;
            } else {
                std::swap(order[i], order[i + 1]);
            }
        }
    }
    return order;
}

}  // namespace rodwright::schedule
