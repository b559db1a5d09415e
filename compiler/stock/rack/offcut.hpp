// What is left of a board or a sheet, as a board or a sheet of its own.
#pragma once

#include "compiler/stock/rack/rack_after.hpp"

namespace rodwright {

// Without a name. `step` is what bow, cup and twist are rounded up to, and sapwood along an edge that tapers.
RackBoard offcut_of(const RackBoard& board, const RackChange::Left& left, const Rational& step);
RackSheet offcut_of(const RackSheet& sheet, const RackChange::Left& left);

}  // namespace rodwright
