// The views along a part: from the front and, where that shows something, from above.
#pragma once

#include <optional>

#include "backends/drawing/scale.hpp"
#include "backends/packet/parts/feature_leaders.hpp"
#include "backends/packet/parts/foreshortening.hpp"
#include "backends/packet/parts/part_cuts.hpp"
#include "backends/packet/parts/part_view.hpp"

namespace rodwright::packet {

class LongViews {
  public:
    LongViews(const PartView& part, const drawing::AxisView& front);

    // The same with what else an end view would say: widths beside the front view, the thickness beside the
    // view from above.
    LongViews with_widths() const;

    // The same with the longest stretch that says nothing left out; empty if there is none to speak of.
    std::optional<LongViews> broken() const;

    // Whether views and dimensions have room at that scale.
    bool fits_in(double width, double height, double factor) const;
    // What they take of the sheet's height.
    double height(double factor) const;
    // From the top of the room down, in the middle of its width, with the planes of the cuts. `dimensioned`:
    // by other views of the sheet.
    void draw(drawing::Sheet& sheet, const drawing::Rect& room, double factor,
              const std::vector<PartCut>& cuts, DimensionedAxes dimensioned) const;
    // The sides of the part that are seen.
    std::vector<Direction> looked_at() const;

  private:
    // The lower left corners of both views.
    struct Places {
        drawing::Point front;
        drawing::Point above;
        double lowest = 0;
    };
    Places places_in(const drawing::Rect& room, double factor) const;
    bool with_above() const { return widths_ || above_says_more_; }
    double strip_over() const;
    double gap() const;
    // The first line left of the front view: clear of what stands beyond the lower end of the lengths below.
    double widths_from() const;
    double thickness_over() const;  // room for the thickness' figure over its arrows
    double shown_length() const;
    std::vector<drawing::Station> stations_along(const std::vector<Rational>& distances, double body_left,
                                                 double factor) const;
    Lengths lengths_along(double body_left, double factor) const;
    void draw_break_lines(drawing::Sheet& sheet, const Places& at, double factor) const;
    drawing::Rect box_of(const drawing::AxisView& view, drawing::Point corner, double factor) const;
    drawing::RunningDimension running_below(double body_left, double bottom, double factor) const;
    DrawnView drawn(const drawing::AxisView& view, drawing::Point corner, double factor) const;
    // Both say whether there was room for where features are.
    bool draw_lengths_below(drawing::Sheet& sheet, double body_left, double bottom, double factor) const;
    bool draw_widths(drawing::Sheet& sheet, drawing::Point corner, double factor) const;
    void draw_thickness(drawing::Sheet& sheet, drawing::Point corner, double factor) const;

    const PartView& part_;
    drawing::AxisView front_;
    drawing::AxisView above_;
    drawing::Projected front_lines_;
    drawing::Projected above_lines_;
    std::optional<Foreshortening> left_out_;
    bool above_says_more_ = false;
    bool widths_ = false;
    double left_ = 0;  // kept free beside the views, mm
    double right_ = 0;
};

}  // namespace rodwright::packet
