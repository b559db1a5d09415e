// A one-dimensional problem: pieces of wanted lengths from stock lengths, without kerf (it is part of the lengths).
#pragma once

#include <vector>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting::linear {

struct Wanted {
    int length = 0;
    int quantity = 0;
};

struct Bar {
    int length = 0;
    int available = 0;
    bool limited = false;
    Amount cost = 0;
};

struct Lengths {
    std::vector<Wanted> wanted;  // all lengths differ; the longest first
    std::vector<Bar> bars;
};

// How often each wanted length is cut from one bar.
struct Pattern {
    struct Entry {
        int wanted = 0;
        int count = 0;
    };
    int bar = 0;
    std::vector<Entry> entries;
};

}  // namespace rodwright::cutting::linear
