// Choices of stock: how many pieces of each kind. A plan needs one that holds all parts
// by every measure.
#pragma once

#include <functional>
#include <vector>

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

using StockChoice = std::vector<int>;  // pieces by kind of stock

// Choices of which every kind is within what is available, which holds all parts by every measure
// (measures.hpp) and whose cost is from `least` to `most`, with no more pieces of the cheapest kind than that
// takes; those of least cost, at most `count`. Nothing if there are too many kinds and pieces to look at all.
std::vector<StockChoice> stock_choices(const Problem& problem, Amount least, Amount most, std::size_t count);

// The least cost of such a choice that is not below the bound: a bound as well. Where there are too many to
// look at all, the least multiple of the costs' common divisor.
Amount rounded_to_stock(const Problem& problem, Amount bound);

// The area with the kerf of all parts, laid the way that takes least.
Amount needed_area(const Problem& problem);

}  // namespace rodwright::cutting
