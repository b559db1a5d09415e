// Lengths that are not known yet: linear in the unknown faces of parts.
#pragma once

#include <cstdint>
#include <vector>

#include "compiler/quantity/rational.hpp"

namespace rodwright {

// Index of an unknown: a face's coordinate, a row's gap.
enum class Unknown : std::uint32_t {};

struct Term {
    Unknown unknown{};
    Rational factor;
    friend bool operator==(const Term&, const Term&) = default;
};

// constant + sum of factor * unknown, in millimetres. Terms may repeat an unknown.
struct Linear {
    Rational constant;
    std::vector<Term> terms;
    friend bool operator==(const Linear&, const Linear&) = default;
};

Linear operator+(Linear a, const Linear& b);
Linear operator-(Linear a, const Linear& b);
Linear operator*(Linear a, const Rational& factor);

// The sum of the terms and the constant is zero.
using LinearEquation = Linear;

}  // namespace rodwright
