// What a view of a part says of its features at the end of leaders: the size of holes, and of a taper what no
// dimension says.
#pragma once

#include <functional>
#include <set>

#include "backends/drawing/leader.hpp"
#include "backends/packet/parts/part_view.hpp"

namespace rodwright::packet {

// A view of a part as it is drawn.
struct DrawnView {
    drawing::AxisView view;
    double factor = 1;
    std::function<drawing::Point(drawing::Point)> on_sheet;  // from the view's plane
};

// The axes along which dimensions on the part's sheet say where features begin and how far they reach.
using DimensionedAxes = std::set<Axis>;

// "2 \u00d7 \u2300 1/4\", 3/4\" deep": holes seen along their axis, those alike once. A hole that is not open
// to the viewer says from where.
std::vector<drawing::Leader> hole_leaders(const PartView& part, const DrawnView& drawn);

// "taper from 5 1/2\" to 1 1/8\"", as far as no dimension says it; none where both are dimensioned.
std::vector<drawing::Leader> taper_leaders(const PartView& part, const DrawnView& drawn,
                                           const DimensionedAxes& dimensioned);

// Both, those that have room.
void draw_feature_leaders(drawing::Sheet& sheet, const PartView& part, const DrawnView& drawn,
                          const DimensionedAxes& dimensioned, const drawing::Rect& room);

}  // namespace rodwright::packet
