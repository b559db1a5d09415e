// Blocks of text, each with a heading, that fill columns one after another.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/text_layout.hpp"

namespace rodwright::drawing {

struct FlowBlock {
    std::string heading;
    std::vector<std::string> paragraphs;
};

// Draws all blocks in the columns, in their order, with text as large as lets them fit but not over `height`.
// A block stays whole unless it alone is taller than a column.
void draw_flow(Sheet& sheet, const std::vector<FlowBlock>& blocks, const std::vector<Rect>& columns,
               double height, const Fonts& fonts);

}  // namespace rodwright::drawing
