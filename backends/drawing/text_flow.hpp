// Blocks of text, each with a heading, that fill columns one after another.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/text_layout.hpp"

namespace rodwright::drawing {

// A piece of a block's text that leads to a sheet. It must not have a blank, where lines are broken.
struct FlowLink {
    std::string text;
    std::string anchor;
};

struct FlowBlock {
    std::string heading;
    std::vector<std::string> paragraphs;
    std::vector<FlowLink> links = {};  // in the order in which their texts stand in the paragraphs
};

// The largest height of text, not over `height`, at which all blocks fit in the columns, in their order. A
// block stays whole unless it alone is taller than a column.
double flow_height(const std::vector<FlowBlock>& blocks, const std::vector<Rect>& columns, double height,
                   const Fonts& fonts);

// Draws them so.
void draw_flow(Sheet& sheet, const std::vector<FlowBlock>& blocks, const std::vector<Rect>& columns,
               double height, const Fonts& fonts);

}  // namespace rodwright::drawing
