#include "backends/packet/parts/long_views.hpp"

#include <algorithm>

#include "backends/packet/parts/part_geometry.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double view_gap = 9;      // between front view and view from above
constexpr double grain_strip = 7;   // the grain arrow's, over the views
constexpr double margin = 15;       // left and right of the front view: room for a tenon's figure
constexpr double line_end = 3;      // past the last dimension line
constexpr double figure_over = 12;  // over a thin view whose thickness stands above its arrows

// How much height the dimensions under the front view take.
double strip_below(const std::vector<Station>& stations, bool joined, const Fonts& fonts) {
    const double running = stations.empty() ? 0 : first_dimension + running_depth(stations, fonts);
    const double lines = (stations.empty() ? first_dimension : 6) + (joined ? next_dimension : 0);
    return running + lines + line_end;
}

}  // namespace

LongViews::LongViews(const PartView& part, const AxisView& front)
    : part_(part),
      front_(front),
      above_(from_above(front)),
      front_lines_(part.seen(front)),
      above_lines_(part.seen(above_)),
      above_says_more_(!is_plain(above_lines_)),
      left_(margin),
      right_(margin) {}

LongViews LongViews::with_widths() const {
    LongViews views = *this;
    views.widths_ = true;
    const std::vector<Station> upright = stations_on_sheet(part_, front_.up, 0, 1);
    const auto lines = [&](Direction along) { return (part_.joined(along) ? next_dimension : 0) + 8; };
    views.left_ = std::max(margin, widths_from() + lines(front_.up));
    views.right_ =
        std::max({margin, first_dimension + lines(above_.up),
                  upright.empty() ? 0 : first_dimension + running_depth(upright, part_.context.fonts)});
    return views;
}

std::optional<LongViews> LongViews::broken() const {
    LongViews views = *this;
    views.left_out_ = foreshortening(part_.kind, front_.right, part_.body(front_).left);
    // What is left of a wide part would look like a part that runs the other way.
    if (!views.left_out_ || views.shown_length() < part_.outline(front_).height()) return std::nullopt;
    views.front_lines_ = shortened(front_lines_, *views.left_out_);
    views.above_lines_ = shortened(above_lines_, *views.left_out_);
    return views;
}

double LongViews::shown_length() const {
    return part_.outline(front_).width() - (left_out_ ? left_out_->removed() : 0);
}

std::vector<Station> LongViews::stations_along(const std::vector<Rational>& distances, double body_left,
                                               double factor) const {
    std::vector<Station> found;
    const double body = part_.body(front_).left;
    for (const Rational& distance : distances) {
        const double at = body + distance.get_d();
        const double shown = left_out_ ? left_out_->at(at) : at;
        found.push_back({body_left + (shown - body) * factor, part_.text(distance)});
    }
    return found;
}

Lengths LongViews::lengths_along(double body_left, double factor) const {
    Lengths lengths = lengths_of(part_, front_.right, body_left, factor);
    if (!left_out_) return lengths;
    lengths.body_end -= left_out_->removed() * factor;
    lengths.end -= left_out_->removed() * factor;
    return lengths;
}

double LongViews::strip_over() const {
    return widths_ ? thickness_over() : grain_strip;
}

double LongViews::gap() const {
    return widths_ ? thickness_over() : view_gap;
}

double LongViews::widths_from() const {
    const Extent& ends = part_.extend(front_.right);
    const Rational& before = front_.right.positive ? ends.low : ends.high;
    if (before == 0 || !part_.joined(front_.up)) return first_dimension;
    return std::max(first_dimension, overflow_reach(part_.text(before), part_.context.fonts) + 6);
}

double LongViews::thickness_over() const {
    const std::string text = part_.text(part_.kind.overall(above_.up.axis));
    return std::max(figure_over, overflow_reach(text, part_.context.fonts) + 2);
}

bool LongViews::fits_in(double width, double height_there, double factor) const {
    return shown_length() * factor <= width - left_ - right_ && height(factor) <= height_there;
}

double LongViews::height(double factor) const {
    const double views = part_.outline(front_).height() + (with_above() ? part_.outline(above_).height() : 0);
    const RunningDimension running = running_below(0, 0, factor);
    const bool shown = fits(running, part_.context.fonts);
    const double strip = strip_below(shown ? running.stations : std::vector<Station>(),
                                     part_.joined(front_.right), part_.context.fonts);
    return views * factor + strip + strip_over() + (with_above() ? gap() : 0);
}

LongViews::Places LongViews::places_in(const Rect& room, double factor) const {
    const Rect outline = part_.outline(front_);
    const double front_height = outline.height() * factor;
    const double above_height = with_above() ? part_.outline(above_).height() * factor + gap() : 0;
    const double left = room.left + left_ + (room.width() - left_ - right_ - shown_length() * factor) / 2;
    const double top = room.top - strip_over();
    const double lowest = top - front_height - above_height;
    const bool third = part_.context.projection == ProjectionMethod::third_angle;
    return {{left, third ? lowest : top - front_height},
            {left, third ? top - above_height + gap() : lowest},
            lowest};
}

std::vector<Direction> LongViews::looked_at() const {
    std::vector<Direction> sides = {front_.towards};
    if (with_above()) sides.push_back(above_.towards);
    return sides;
}

void LongViews::draw(Sheet& sheet, const Rect& room, double factor, const std::vector<PartCut>& cuts,
                     DimensionedAxes dimensioned) const {
    const Places at = places_in(room, factor);
    const auto place = [&](const AxisView& view, Point corner) {
        const Rect outline = part_.outline(view);
        return ViewPlace{factor, {outline.left, outline.bottom}, corner};
    };
    draw_grain_arrow(sheet, {at.front.x, room.top - 3});
    draw_view(sheet, front_lines_, place(front_, at.front), part_.label());
    if (with_above()) draw_view(sheet, above_lines_, place(above_, at.above), part_.label());
    draw_break_lines(sheet, at, factor);
    const double body_left = at.front.x + (part_.body(front_).left - part_.outline(front_).left) * factor;
    if (draw_lengths_below(sheet, body_left, at.lowest, factor)) dimensioned.insert(front_.right.axis);
    if (widths_) {
        if (draw_widths(sheet, at.front, factor)) dimensioned.insert(front_.up.axis);
        draw_thickness(sheet, at.above, factor);
    }
    const DrawnView front = drawn(front_, at.front, factor);
    draw_cutting_planes(sheet, cuts, part_, front, part_.context.fonts);
    draw_feature_leaders(sheet, part_, front, dimensioned, room);
    if (with_above()) draw_feature_leaders(sheet, part_, drawn(above_, at.above, factor), dimensioned, room);
}

DrawnView LongViews::drawn(const AxisView& view, Point corner, double factor) const {
    const Rect outline = part_.outline(view);
    const ViewPlace place{factor, {outline.left, outline.bottom}, corner};
    return {view, factor, [place, stretch = left_out_](Point point) {
                return place.on_sheet(Point{stretch ? stretch->at(point.x) : point.x, point.y});
            }};
}

Rect LongViews::box_of(const AxisView& view, Point corner, double factor) const {
    const Rect outline = part_.outline(view);
    return {corner.x, corner.y, corner.x + shown_length() * factor, corner.y + outline.height() * factor};
}

void LongViews::draw_break_lines(Sheet& sheet, const Places& at, double factor) const {
    if (!left_out_) return;
    const auto draw = [&](const AxisView& view, Point corner) {
        const Rect box = box_of(view, corner, factor);
        const double left = box.left + (left_out_->from - part_.outline(view).left) * factor;
        for (const double x : {left, left + left_out_->gap * factor})
            draw_break_line(sheet, x, box.bottom, box.top);
    };
    draw(front_, at.front);
    if (with_above()) draw(above_, at.above);
}

RunningDimension LongViews::running_below(double body_left, double bottom, double factor) const {
    const Lengths lengths = lengths_along(body_left, factor);
    RunningDimension running{Run::across,
                             bottom,
                             bottom - first_dimension,
                             lengths.body_start,
                             stations_along(stations(part_.kind, front_.right), lengths.body_start, factor),
                             lengths.body_start + 3,
                             lengths.body_end - 3};
    if (!fits(running, part_.context.fonts)) {
        running.stations = stations_along(starts(part_.kind, front_.right), lengths.body_start, factor);
    }
    return running;
}

bool LongViews::draw_lengths_below(Sheet& sheet, double body_left, double bottom, double factor) const {
    const Lengths lengths = lengths_along(body_left, factor);
    const RunningDimension running = running_below(body_left, bottom, factor);
    const bool shown = fits(running, part_.context.fonts);
    double line = bottom - first_dimension;
    if (shown && !running.stations.empty()) {
        draw_running(sheet, running, part_.context.fonts);
        line -= running_depth(running.stations, part_.context.fonts) + 6;
    }
    draw_lengths(sheet, part_, Run::across, front_.right, lengths, bottom, line, -next_dimension);
    return shown;
}

bool LongViews::draw_widths(Sheet& sheet, Point corner, double factor) const {
    const Rect box = box_of(front_, corner, factor);
    const double body_bottom = corner.y + (part_.body(front_).bottom - part_.outline(front_).bottom) * factor;
    const Lengths up = lengths_of(part_, front_.up, body_bottom, factor);
    draw_lengths(sheet, part_, Run::upright, front_.up, up, box.left, box.left - widths_from(),
                 -next_dimension);
    const RunningDimension running{Run::upright,
                                   box.right,
                                   box.right + first_dimension,
                                   up.body_start,
                                   stations_on_sheet(part_, front_.up, up.body_start, factor),
                                   box.bottom,
                                   box.top};
    const bool shown = fits(running, part_.context.fonts);
    if (shown) draw_running(sheet, running, part_.context.fonts);
    return shown;
}

void LongViews::draw_thickness(Sheet& sheet, Point corner, double factor) const {
    const Rect box = box_of(above_, corner, factor);
    const double body_bottom = corner.y + (part_.body(above_).bottom - part_.outline(above_).bottom) * factor;
    const Lengths up = lengths_of(part_, above_.up, body_bottom, factor);
    draw_lengths(sheet, part_, Run::upright, above_.up, up, box.right, box.right + first_dimension,
                 next_dimension);
}

}  // namespace rodwright::packet
