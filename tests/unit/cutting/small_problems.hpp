// Small problems from a seed, for comparison with their true optimum.
#pragma once

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

struct SmallProblems {
    int dimensions = 2;
    bool defects = false;
    bool faces = false;  // defects are on one face or both, and some parts need only one without
    CutRule rule;
    int least_pieces = 3;
    int most_pieces = 6;
    int longest_part = 6;
    int longest_stock = 9;
};

// Up to three kinds of stock, the first without limit and large enough for every part, each with a cost of
// its own; a kerf for each axis; parts that may turn and parts that may not.
Problem small_problem(const SmallProblems& family, unsigned seed);

}  // namespace rodwright::cutting
