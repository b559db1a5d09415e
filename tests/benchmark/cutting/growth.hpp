// How the time for a plan grows with the number of parts.
#pragma once

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

// Plans generated jobs of 50 to 2000 parts, in one dimension and in two, and prints the processor time of
// each and the exponent of its growth from the first to the last.
void print_growth(Effort effort);

// Of this process, in seconds.
double processor_seconds();

}  // namespace rodwright::cutting
