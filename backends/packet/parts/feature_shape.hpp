// The shape of a feature that is no plain box, in words that together with the box around it say all of it.
#pragma once

#include <string>

#include "backends/drawing/axis_view.hpp"
#include "backends/packet/figure.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::packet {

// "right end", "upper edge", "near face": the side of the drawing that a direction of the kind's frame points
// to.
std::string side_name(Direction direction, const drawing::AxisView& view);

// Empty for boxes and round holes. "arc"; "wedge, deepest at the left end, 1.5\u00b0"; "dovetail, 13/16\" at
// the upper edge, 14\u00b0"; of any other profile its corners, each by its distances from the box's two lower
// sides.
std::string shape_text(const Kind& kind, const Feature& feature, const drawing::AxisView& view,
                       const FigureStyle& style);

}  // namespace rodwright::packet
