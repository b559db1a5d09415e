// Hidden-line removal.
#pragma once

#include <vector>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::occt {

// Every edge as seen, as the kernel gives it: lines may cover each other.
std::vector<ViewLine> project(const std::vector<PlacedSolid>& solids, const View& from, bool with_hidden);

}  // namespace rodwright::occt
