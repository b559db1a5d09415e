// One kind of part as its views need it: outlines, stations and lengths on the sheet.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/dimension.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/packet/context.hpp"

namespace rodwright::packet {

inline constexpr double caption_strip = 7;  // a caption's, under a view

struct PartView {
    const Context& context;
    const Kind& kind;
    SolidRef solid;
    Bounds bounds;  // of the solid: asking the kernel for them takes its time

    // All that may be seen of it: the stock, and a body that reaches beyond.
    drawing::Rect outline(const drawing::AxisView& view) const;
    // The visible body.
    drawing::Rect body(const drawing::AxisView& view) const;
    // Lines that come from a feature have its number, counted from 1, as their tag.
    drawing::Projected seen(const drawing::AxisView& view) const;
    // The group of such lines: what made the feature, and the line of the design.
    drawing::PartLabel label() const;
    std::string text(const Rational& length) const { return figure(length, context.figures()); }
    const Extent& extend(Direction along) const { return kind.extend[static_cast<std::size_t>(along.axis)]; }
    // Whether joints make it longer than its visible body that way.
    bool joined(Direction along) const { return extend(along).low != 0 || extend(along).high != 0; }
};

// Distances as they stand on the sheet, the datum at `datum`.
std::vector<drawing::Station> stations_on_sheet(const PartView& part, const std::vector<Rational>& distances,
                                                double datum, double factor);
// All stations along a direction.
std::vector<drawing::Station> stations_on_sheet(const PartView& part, Direction along, double datum,
                                                double factor);

// A rectangle and nothing else: the view says no more than its two sizes.
bool is_plain(const drawing::Projected& view);

// Lengths along one direction: the visible body, what joints add at either end, and all of it.
struct Lengths {
    double start = 0;  // of the stock, on the sheet
    double body_start = 0;
    double body_end = 0;
    double end = 0;
};

Lengths lengths_of(const PartView& part, Direction along, double body_start, double factor);

// Dimension lines from `first` outwards in steps of `step`: tenons and body on one, the whole on the next.
// `outline` is where the extension lines start.
void draw_lengths(drawing::Sheet& sheet, const PartView& part, drawing::Run run, Direction along,
                  const Lengths& at, double outline, double first, double step);

}  // namespace rodwright::packet
