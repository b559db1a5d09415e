// Equations in the form that solving works on. Internal to linear_system.cpp and its two phases.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "compiler/limits.hpp"
#include "compiler/place/linear_system.hpp"

namespace rodwright {

struct RowEntry {
    std::uint32_t unknown = 0;
    Rational factor;
};

// The sum of the entries and the constant is zero. Entries are in increasing order of unknowns, each unknown
// once, and no factor is zero.
struct LinearRow {
    std::vector<RowEntry> entries;
    Rational constant;
};

using Values = std::vector<std::optional<Rational>>;

// What solving may still cost, over all its phases: rows can fill up, and numbers grow. Once it is used up,
// every phase stops with what it has.
class Effort {
  public:
    // Counts a number that was made. False if it is too large to go on with, or nothing is left.
    bool spend(const Rational& made);
    // Counts so many numbers that were only looked at or moved.
    void pass_over(std::size_t numbers);
    bool used_up() const { return left_ == 0; }

  private:
    std::size_t left_ = limits::solving;
};

LinearRow to_row(const LinearEquation& equation);

// The row with the known values put in.
LinearRow substitute(const LinearRow& row, const Values& values, Effort& effort);

}  // namespace rodwright
