// The drawn part of a part's sheet.
#pragma once

#include "backends/drawing/axis_view.hpp"
#include "backends/packet/context.hpp"

namespace rodwright::packet {

// Front view (with the view from above where that shows more) over end view and pictorials. Returns the front
// view's scale, `1:5`.
std::string draw_part_views(drawing::Sheet& sheet, const Context& context, KindId kind,
                            const drawing::AxisView& front, const drawing::Rect& room);

}  // namespace rodwright::packet
