// Lower bounds worked out by hand.
#include "compiler/stock/cutting/bounds/bounds.hpp"

#include <doctest/doctest.h>

using namespace rodwright::cutting;

TEST_SUITE("unit/cutting") {
    TEST_CASE("parts longer than half of the sheet along both axes need a sheet each") {
        Problem problem;
        problem.stock.push_back({{{10, 10}}, std::nullopt, 3, {}});
        problem.parts.push_back({{{6, 6}}, 5, true});
        const LowerBound bound = lower_bound(problem);
        CHECK(bound.cost == 15);
        CHECK(bound.method == BoundMethod::dual_feasible);
    }

    TEST_CASE("parts a little longer than a third go two side by side") {
        Problem problem;
        problem.stock.push_back({{{10, 10}}, std::nullopt, 1, {}});
        problem.parts.push_back({{{4, 10}}, 7, false});
        CHECK(lower_bound(problem).cost == 4);
    }

    TEST_CASE("the kerf counts") {
        Problem problem;
        problem.stock.push_back({{{100, 100}}, std::nullopt, 1, {}});
        problem.parts.push_back({{{50, 100}}, 4, false});
        CHECK(lower_bound(problem).cost == 2);
        problem.kerf = 1;
        CHECK(lower_bound(problem).cost == 4);
    }

    TEST_CASE("area is bought where it is cheapest as long as that lasts") {
        Problem problem;
        problem.stock.push_back({{{10, 10}}, 1, 50, {}});
        problem.stock.push_back({{{10, 10}}, std::nullopt, 100, {}});
        problem.parts.push_back({{{5, 10}}, 3, false});
        const LowerBound bound = lower_bound(problem);
        CHECK(bound.cost == 100);  // 50 and half of 100
        CHECK(bound.method == BoundMethod::area);
    }
}
