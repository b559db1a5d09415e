// The search against all orders of six jobs, with nights too, which the programme of tests/reference/workplan
// knows nothing of.
#include <doctest/doctest.h>

#include <algorithm>

#include "compiler/workplan/schedule/progress.hpp"
#include "compiler/workplan/schedule/schedule.hpp"
#include "tests/support/shop_work.hpp"

using namespace rodwright::schedule;

namespace {

bool keeps_precedences(const Network& network, const std::vector<std::size_t>& order) {
    for (std::size_t i = 0; i < order.size(); ++i) {
        for (std::size_t k = i + 1; k < order.size(); ++k) {
            if (network.precedes(order[k], order[i])) return false;
        }
    }
    return true;
}

std::pair<Seconds, std::size_t> best_of_all_orders(const Network& network) {
    std::vector<std::size_t> order = natural_order(network);
    std::optional<std::pair<Seconds, std::size_t>> best;
    do {
        if (!keeps_precedences(network, order)) continue;
        Progress progress(network, 0);
        for (const std::size_t task : order) progress.take(network, progress.place(network, task));
        const std::pair found(progress.figures().makespan, progress.figures().set_ups);
        best = best ? std::min(*best, found) : found;
    } while (std::next_permutation(order.begin(), order.end()));
    return best.value();
}

}  // namespace

TEST_SUITE("unit/schedule") {
    TEST_CASE("makespan and set-ups are the best of all orders, with and without nights") {
        for (const std::size_t workers : {1U, 2U}) {
            for (std::uint64_t seed = 1; seed <= 24; ++seed) {
                CAPTURE(workers);
                CAPTURE(seed);
                Problem problem = small_work(6, workers, seed);
                if (seed % 2 == 0) {
                    problem.day = 3 * 3600;
                    for (Job& each : problem.jobs) each.work *= 700;
                    for (SetUp& each : problem.set_ups) each.work *= 500;
                    for (Precedence& each : problem.precedences) each.wait *= 2000;
                }
                const Timetable timetable = make_timetable(problem).value();
                CHECK(std::pair(timetable.makespan, timetable.set_ups) ==
                      best_of_all_orders(Network::make(problem).value()));
            }
        }
    }
}
