// The text at the top of a part's sheet.
#pragma once

#include "backends/packet/context.hpp"

namespace rodwright::packet {

// Letter, name, how many, wood, sizes, opposite hand, what is done to its edges. Returns the lower edge of
// it.
double draw_part_heading(drawing::Sheet& sheet, const Context& context, KindId kind,
                         const drawing::Rect& room);

}  // namespace rodwright::packet
