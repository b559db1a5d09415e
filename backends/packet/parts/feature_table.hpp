// The table of a part's features: what each is, where it starts and how big it is, in the words of the
// drawing.
#pragma once

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/table.hpp"
#include "backends/packet/figure.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::packet {

// Without rows for a part that is only sawn to size. `view` is the part's front view, which says what is
// left, lower and near.
drawing::Table feature_table(const Kind& kind, const drawing::AxisView& view, const FigureStyle& style);

}  // namespace rodwright::packet
