// Solids seen from one side: their lines in the view's own plane, and drawing them on a sheet.
#pragma once

#include <functional>
#include <vector>

#include "backends/drawing/sheet.hpp"
#include "compiler/solid/solid_kernel.hpp"

namespace rodwright::drawing {

// Lines with their extent, in millimetres of the model.
struct Projected {
    std::vector<ViewLine> lines;
    Rect bounds;
};

Projected projected(std::vector<ViewLine> lines);
Projected project(const SolidKernel& kernel, const std::vector<PlacedSolid>& solids, const View& from,
                  bool with_hidden);

// Where a view stands on the sheet: the model's point `origin` (in the view's plane) is at `at`.
struct ViewPlace {
    double factor = 1;
    Point origin;
    Point at;
    Point on_sheet(Point model) const { return at + (model - origin) * factor; }
    Rect on_sheet(const Rect& model) const;
    Point on_model(Point sheet) const { return origin + (sheet - at) * (1 / factor); }
};

// What the group of a part is called, by the tag that its solid was placed with; one without a name is no
// group.
using PartLabel = std::function<GroupStart(std::uint32_t)>;

// An item of a part.
struct TaggedItem {
    std::uint32_t tag = 0;
    Item item;
};

// In the order given; or, where parts have labels, each part's in a group of its own.
void add_by_part(Sheet& sheet, std::vector<TaggedItem> items, const PartLabel& label);

// Hidden lines first, then smooth ones, then visible ones: where two meet, the one that counts is on top.
void draw_view(Sheet& sheet, const Projected& view, const ViewPlace& place, const PartLabel& label = {});

// A line of a view on the sheet: straight lines and curves as strokes, arcs as arcs.
Item drawn_line(const ViewLine& line, const ViewPlace& place, LineRole role);

}  // namespace rodwright::drawing
