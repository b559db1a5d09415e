// Panels glued from staves.
#pragma once

#include "compiler/stock/rough/rough.hpp"

namespace rodwright {

// What to glue up for the parts of a kind, whether the design says that it is glued or not.
PanelNeed panel_need(const Piece& piece, KindId id, const MillingData& milling);

}  // namespace rodwright
