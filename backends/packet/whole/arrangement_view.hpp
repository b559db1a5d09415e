// One view of the general arrangement: its lines, what of which part is seen, where its letters go.
#pragma once

#include <array>
#include <set>
#include <span>
#include <vector>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/balloon.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/packet/context.hpp"

namespace rodwright::packet {

struct ArrangementView {
    drawing::AxisView view;
    drawing::Projected lines;
    std::vector<std::uint32_t> seen;  // the part at each pixel of `grid`
    drawing::PixelGrid grid;
    drawing::ViewPlace place;
    drawing::BalloonLine letters;
    std::vector<drawing::Callout> callouts;

    double width() const { return lines.bounds.width(); }
    double height() const { return lines.bounds.height(); }
    drawing::Rect on_sheet() const { return place.on_sheet(lines.bounds); }
};

// Front, plan, side.
using ArrangementViews = std::array<ArrangementView, 3>;
ArrangementViews arrangement_views(const Context& context);

// Gives each kind's letter to the view that shows it best and has room for it. Returns the letters that have
// no place.
std::vector<std::string> call_out(const Context& context, std::span<ArrangementView> views);

// Where the parts begin and end along an axis: the piece may have room around them.
std::set<Rational> ends_of_parts(const Piece& piece, Axis axis);

// The sizes along an axis of the piece that a maker sets the parts by, besides the whole: where parts begin
// or end and a view shows it, from the side that is left or low on the paper (`along`). At most six, those
// that show most; rising.
std::vector<Rational> principal_sizes(const Context& context, const ArrangementViews& views, Direction along);

}  // namespace rodwright::packet
