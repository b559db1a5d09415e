// The true shape of a kind.
#pragma once

#include <TopoDS_Shape.hxx>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::occt {

// Null if nothing usable remains; what went wrong is in `diagnostics` either way.
TopoDS_Shape build_kind(const Kind& kind, Diagnostics& diagnostics);

}  // namespace rodwright::occt
