// An order that nothing forces apart reads in the natural one.
#include "compiler/workplan/schedule/settle.hpp"

#include <doctest/doctest.h>

#include <numeric>

using namespace rodwright::schedule;

TEST_SUITE("unit/schedule") {
    TEST_CASE("what stands against the natural order for nothing goes back to it") {
        Problem problem;
        for (std::size_t i = 0; i < 20; ++i) {
            problem.set_ups.push_back({0, 60});
            problem.jobs.push_back({600, i, i, {}, 0});
        }
        problem.jobs[3].rank = 30;  // the last of them
        const std::optional<Network> network = Network::make(problem);
        REQUIRE(network);
        std::vector<std::size_t> backwards(20);
        std::iota(backwards.rbegin(), backwards.rend(), 0);
        const std::vector<std::size_t> settled = settle(*network, 0, backwards);
        // A round brings each as far back as the one before it lets it.
        std::size_t inversions = 0;
        for (std::size_t i = 0; i < settled.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) inversions += settled[j] > settled[i] ? 1 : 0;
        }
        CHECK(inversions < 190 / 3);
        CHECK(settle(*network, 0, settled).size() == 20);
    }

    TEST_CASE("a set-up that would be made twice keeps neighbours where they are") {
        Problem problem;
        problem.set_ups = {{0, 60}, {0, 60}};
        problem.jobs = {{600, 0, 0, {}, 0}, {600, 1, 1, {}, 0}, {600, 0, 2, {}, 0}};
        const std::optional<Network> network = Network::make(problem);
        REQUIRE(network);
        CHECK(settle(*network, 0, {0, 2, 1}) == std::vector<std::size_t>{0, 2, 1});
        CHECK(settle(*network, 0, {1, 0, 2}) == std::vector<std::size_t>{1, 0, 2});
    }
}
