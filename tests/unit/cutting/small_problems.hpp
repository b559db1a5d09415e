// Tiny problems from a seed, for comparison with the exhaustive optimum.
#pragma once

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

struct SmallProblems {
    int dimensions = 2;
    bool defects = false;
    CutRule rule;
};

Problem small_problem(const SmallProblems& family, unsigned seed);

}  // namespace rodwright::cutting
