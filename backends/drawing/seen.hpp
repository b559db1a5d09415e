// What of a display list is seen.
#pragma once

#include <optional>
#include <vector>

#include "backends/drawing/fonts.hpp"
#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

// The box around every item, a text's letters included, cut to the clips that it stands in. Empty for what
// draws nothing and for what its clips hide.
std::vector<std::optional<Rect>> seen_boxes(const std::vector<Item>& items, const Fonts& fonts);

// Around all of them; empty if nothing is seen.
std::optional<Rect> seen_extent(const std::vector<Item>& items, const Fonts& fonts);

}  // namespace rodwright::drawing
