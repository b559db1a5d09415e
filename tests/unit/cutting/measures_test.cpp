#include "compiler/stock/cutting/bounds/measures.hpp"

#include <doctest/doctest.h>

#include "compiler/stock/cutting/bounds/bounds.hpp"

using namespace rodwright::cutting;

namespace {

// Three parts of 60 x 6 and boards of 100 x 10 and 200 x 10, without kerf.
Problem three_rails() {
    Problem problem;
    problem.stock = {{{{100, 10}}, std::nullopt, 5, {}}, {{{200, 10}}, std::nullopt, 9, {}}};
    problem.parts = {{{{60, 6}}, 3, false}};
    return problem;
}

}  // namespace

TEST_SUITE("unit/cutting") {
    TEST_CASE("parts that cannot lie side by side are counted by their lengths") {
        // By area 1080 of 1000 + ...: two short boards, cost 10. But a short board holds one rail, a long one
        // three: one long board, cost 9, is the least.
        const LowerBound bound = lower_bound(three_rails());
        CHECK(bound.cost == 9);
        CHECK(bound.method == BoundMethod::stock_choice);
    }

    TEST_CASE("a board that is too narrow for a part holds none of it") {
        Problem problem = three_rails();
        problem.stock[1] = {{{200, 5}}, std::nullopt, 1, {}};
        CHECK(lower_bound(problem).cost == 15);  // three short ones
    }

    TEST_CASE("the kerf counts") {
        Problem problem = three_rails();
        problem.kerf = {{11, 0}};
        // 200 + 11 holds two of 60 + 11 and not three.
        CHECK(lower_bound(problem).cost == 14);  // one long and one short
    }

    TEST_CASE("all stock together may be too little") {
        Problem problem = three_rails();
        problem.stock[0].available = 1;
        problem.stock[1].available = 0;
        CHECK(too_little_stock(problem));
        problem.stock[0].available = 3;
        CHECK_FALSE(too_little_stock(problem));
        problem.stock[0].available.reset();
        CHECK_FALSE(too_little_stock(problem));
    }

    TEST_CASE("where parts may be turned only areas count") {
        Problem problem = three_rails();
        problem.parts[0].may_turn = true;
        CHECK(measures(problem).size() == 1);
        CHECK(measures(problem)[0].needed == 1080);
        CHECK(measures(problem)[0].held == std::vector<Amount>{1000, 2000});
    }
}
