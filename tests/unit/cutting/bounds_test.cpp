// Lower bounds worked out by hand.
#include "compiler/stock/cutting/bounds/bounds.hpp"

#include <doctest/doctest.h>

#include "compiler/stock/cutting/bounds/stock_choice.hpp"

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
        problem.kerf[Axis::width] = 1;
        CHECK(lower_bound(problem).cost == 2);
        problem.kerf[Axis::length] = 1;
        CHECK(lower_bound(problem).cost == 4);
    }

    // Upright with its kerf a part is 26 x 100, turned 101 x 25: four of the turned ones fill a sheet of 100
    // x 100 that is cut across with a kerf of no width.
    TEST_CASE("a part that may turn counts with the kerf of the better way to lay it") {
        Problem problem;
        problem.stock.push_back({{{100, 100}}, std::nullopt, 1, {}});
        problem.kerf = {{1, 0}};
        problem.parts.push_back({{{25, 100}}, 8, true});
        CHECK(lower_bound(problem).cost == 2);
        problem.parts[0].may_turn = false;
        CHECK(lower_bound(problem).cost == 3);
    }

    TEST_CASE("area is bought where it is cheapest as long as that lasts") {
        Problem problem;
        problem.stock.push_back({{{10, 10}}, 1, 50, {}});
        problem.stock.push_back({{{10, 10}}, std::nullopt, 100, {}});
        problem.parts.push_back({{{5, 10}}, 4, false});
        const LowerBound bound = lower_bound(problem);
        CHECK(bound.cost == 150);
        CHECK(bound.method == BoundMethod::area);
        problem.parts[0].quantity = 3;
        CHECK(lower_bound(problem).cost == 150);  // half of the second piece cannot be bought
    }

    // 17 are needed. Two of 10 cost 20, one of 10 and two of 4 cost 18, five of 4 cost 20.
    TEST_CASE("a bound is rounded up to what a choice of stock costs that holds all parts") {
        Problem problem;
        problem.stock.push_back({{{10, 1}}, std::nullopt, 10, {}});
        problem.stock.push_back({{{4, 1}}, std::nullopt, 4, {}});
        problem.parts.push_back({{{1, 1}}, 17, false});
        CHECK(rounded_to_stock(problem, 17) == 18);
        CHECK(rounded_to_stock(problem, 19) == 20);
        CHECK(stock_choices(problem, 0, 24, 10) == std::vector<StockChoice>{{1, 2}, {0, 5}, {2, 0}});
        CHECK(stock_choices(problem, 0, 24, 1).size() == 1);
        CHECK(stock_choices(problem, 0, 19, 10).size() == 1);
        problem.stock[1].available = 1;
        CHECK(rounded_to_stock(problem, 17) == 20);
    }
}
