// What the checks have to say: findings, and the numbers behind them for whoever wants to see the sums.
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/quantity/quantity.hpp"

namespace rodwright {

// One thing that was computed, or the worst of several alike.
struct Number {
    std::string check;  // name in the table of checks: "movement"
    std::string title;  // "top: its width in the dampest air"
    Quantity value;
    std::optional<Quantity> limit;  // what it is held against
    std::string formula;            // "equation 13-2", with what it says
    std::vector<std::pair<std::string, Quantity>> inputs;
    std::string source;  // of the formula and its constants
    std::vector<std::string> assumptions;
};

struct Findings {
    Diagnostics diagnostics;
    std::vector<Number> numbers;  // in the order of the checks
};

// A computed value; `dimension` says in which base unit. What is no number, which no rational can be, is
// nothing.
inline Quantity computed(double value, const Dimension& dimension) {
    return {std::isfinite(value) ? Rational(value) : Rational(0), dimension, false};
}

inline Quantity computed_length(double millimetres) {
    return computed(millimetres, Dimension::of(Base::length));
}

}  // namespace rodwright
