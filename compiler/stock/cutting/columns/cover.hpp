// What column generation is about, in one dimension or two: quantities that patterns cut from stock must
// cover.
#pragma once

#include <vector>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting::columns {

struct Wanted {
    int length = 0;  // with the kerf; of use in one dimension only
    int quantity = 0;
};

struct Bar {
    int length = 0;  // likewise
    int available = 0;
    bool limited = false;  // fewer may be available than are asked for
    Amount cost = 0;
};

struct Cover {
    std::vector<Wanted> wanted;
    std::vector<Bar> bars;
};

// How often each wanted piece is cut from one bar.
struct Pattern {
    struct Entry {
        int wanted = 0;
        int count = 0;
    };
    int bar = 0;
    std::vector<Entry> entries;
};

}  // namespace rodwright::cutting::columns
