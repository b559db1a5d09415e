// A part seen from its right end, with what is measured across it.
#pragma once

#include "backends/drawing/scale.hpp"
#include "backends/packet/parts/easing_notes.hpp"
#include "backends/packet/parts/feature_leaders.hpp"

namespace rodwright::packet {

// The end view with the space its dimensions take on each side.
class EndView {
  public:
    EndView(const PartView& part, const drawing::AxisView& end);

    // Whether it shows more than the size of the section.
    bool says_more() const;
    // What it takes of the sheet's height at that scale.
    double height(double factor) const { return outline_.height() * factor + over_ + under_; }
    // As large as the room allows. Returns along what it says where features are.
    DimensionedAxes draw(drawing::Sheet& sheet, const drawing::Rect& room) const;

  private:
    double joint_line(Direction along) const { return part_.joined(along) ? drawing::next_dimension : 0; }
    void draw_sizes(drawing::Sheet& sheet, const drawing::ViewPlace& place) const;
    DimensionedAxes draw_stations(drawing::Sheet& sheet, const drawing::ViewPlace& place,
                                  const drawing::Rect& room) const;

    const PartView& part_;
    drawing::AxisView end_;
    drawing::Projected lines_;
    drawing::Rect outline_;
    std::vector<EasingNote> notes_;
    double left_ = 0;  // mm kept free around the view
    double right_ = 0;
    double over_ = 0;
    double under_ = 0;
};

}  // namespace rodwright::packet
