// A rack's file in a random style, for tests of what changes it.
#pragma once

#include <random>
#include <string>
#include <vector>

namespace rodwright::testing {

struct RandomRack {
    // A stretch of the file, and the entry that takes it along when it goes: its name, or empty.
    struct Stretch {
        std::string text;
        std::string owner;
    };
    std::vector<Stretch> stretches;
    bool in_lines = false;  // each stretch is whole lines, so that they can be told apart in the changed file

    std::string text() const;
};

// Boards, offcuts and sheets with names of their own, some without one or another list; entries with dashes
// or in brackets, on one line or on several; comments, blank lines, quotes; `\n` or `\r\n`, with or without a
// last line end.
RandomRack random_rack(std::mt19937& random);

}  // namespace rodwright::testing
