// Blanks of solid wood, each of one part or of several that are short.
#pragma once

#include <vector>

#include "compiler/stock/rough/rough.hpp"

namespace rodwright {

// The blanks for all parts of a kind, and of its mirror image where they share. Nothing for a kind whose
// parts are in the blanks of the earlier kind that it is the mirror image of.
std::vector<Blank> blanks_of(const Piece& piece, KindId id, const MillingData& milling);

}  // namespace rodwright
