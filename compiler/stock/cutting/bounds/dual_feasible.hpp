// A lower bound on the number of stock pieces of one kind: dual feasible functions.
//
// A function f of sizes along one axis is dual feasible for a stock piece if the sizes of whatever lies side
// by side in it never have values of more than f's capacity. For one function along each axis, the products
// of the values of all parts, over the product of the capacities, is then at most the number of stock pieces
// (S. Fekete, J. Schepers, Mathematical Methods of Operations Research 60 (2004) 311-329).
#pragma once

#include "compiler/stock/cutting/problem.hpp"

namespace rodwright::cutting {

// The best over all pairs of three families: thresholds and roundings (Fekete and Schepers as above), and
// counts of small parts (J. Carlier, F. Clautiaux, A. Moukrim, Computers & Operations Research 34 (2007)
// 2223-2250). A part that may be turned counts with the smaller of both its values.
Amount dual_feasible_bound(const Problem& problem);

}  // namespace rodwright::cutting
