// Where ink falls: to find places that are free of it, and to check that texts stand on them.
#pragma once

#include <optional>
#include <vector>

#include "backends/drawing/fonts.hpp"
#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

// Whether part of the straight line from `a` to `b` lies within the box.
bool crosses(Point a, Point b, const Rect& box);

// Whether the item puts ink into the box: a line or an arc by its course, a filled shape by its area too, a
// disc by the box around it. Texts do not count: text_box() says where they are.
bool inks(const Item& item, const Rect& box);

// A sheet as what is added to it has to keep clear of what is there.
class Paper {
  public:
    // Of the sheet as it is now, which is kept by address.
    Paper(const Sheet& sheet, const Fonts& fonts);
    // No ink and no text in the box.
    bool is_free(const Rect& box) const;
    // How many lines of dimensions a straight line crosses; empty where it would cross a text.
    std::optional<int> crossings(Point from, Point to) const;

  private:
    const std::vector<Item>& items_;
    std::vector<std::optional<Rect>> boxes_;
};

}  // namespace rodwright::drawing
