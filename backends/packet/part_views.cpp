#include "backends/packet/part_views.hpp"

#include <algorithm>
#include <span>

#include "backends/drawing/dimension.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/drawing/scale.hpp"
#include "backends/packet/part_geometry.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double view_gap = 9;       // between front view and view from above
constexpr double grain_strip = 7;    // the grain arrow's, over the views
constexpr double caption_strip = 7;  // a caption's, under or over a view
constexpr double margin = 15;        // left and right of the front view: room for a tenon's figure
constexpr double line_end = 3;       // past the last dimension line

// A box's rectangle in a view's plane.
Rect outline_of(const Point3& low, const Point3& high, const AxisView& view) {
    const Point a = view.on_paper(low);
    const Point b = view.on_paper(high);
    return {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
}

Rect outline_of(const Box& box, const AxisView& view) {
    const auto point = [](const Vector& v) {
        return Point3{v.at[0].get_d(), v.at[1].get_d(), v.at[2].get_d()};
    };
    return outline_of(point(box.low), point(box.high), view);
}

struct PartView {
    const Context& context;
    const Kind& kind;
    SolidRef solid;

    // All that may be seen of it: the stock, and a body that reaches beyond.
    Rect outline(const AxisView& view) const {
        const Bounds bounds = context.kernel.bounds(*solid);
        return around(outline_of(overall_box(kind), view), outline_of(bounds.low, bounds.high, view));
    }
    // The visible body.
    Rect body(const AxisView& view) const { return outline_of(visible_box(kind), view); }
    Projected seen(const AxisView& view) const {
        return project(context.kernel, {{solid, {}, 0}}, view.view(), true);
    }
    std::string text(const Rational& length) const { return figure(length, context.piece.style); }
};

// Stations as they stand on the sheet, the datum at `datum`.
std::vector<Station> stations_on_sheet(const PartView& part, Direction along, double datum, double factor) {
    std::vector<Station> found;
    for (const Rational& distance : stations(part.kind, along)) {
        found.push_back({datum + distance.get_d() * factor, part.text(distance)});
    }
    return found;
}

// A rectangle and nothing else: the view says no more than its two sizes.
bool is_plain(const Projected& view) {
    const auto inner = [&](const ViewLine& line) {
        if (line.line_class == LineClass::seam) return false;
        for (const Point& point : points_of(line, 0.05)) {
            constexpr double on_edge = 1e-3;
            const Rect& b = view.bounds;
            const bool border = std::min({point.x - b.left, b.right - point.x, point.y - b.bottom,
                                          b.top - point.y}) < on_edge;
            if (!border) return true;
        }
        return line.shape != LineShape::line;
    };
    return std::none_of(view.lines.begin(), view.lines.end(), inner);
}

// Lengths along one direction: the visible body, what joints add at either end, and all of it.
struct Lengths {
    double start = 0;  // of the stock, on the sheet
    double body_start = 0;
    double body_end = 0;
    double end = 0;
};

Lengths lengths_of(const PartView& part, Direction along, double body_start, double factor) {
    const Extent& extend = part.kind.extend[static_cast<std::size_t>(along.axis)];
    const Rational& before = along.positive ? extend.low : extend.high;
    Lengths lengths;
    lengths.start = body_start - before.get_d() * factor;
    lengths.body_start = body_start;
    lengths.body_end = body_start + part.kind.size[along.axis].get_d() * factor;
    lengths.end = lengths.start + part.kind.overall(along.axis).get_d() * factor;
    return lengths;
}

// Dimension lines from `first` outwards in steps of `step`: tenons and body on one, the whole on the next.
// `outline` is where the extension lines start.
void draw_lengths(Sheet& sheet, const PartView& part, Run run, Direction along, const Lengths& at,
                  double outline, double first, double step) {
    const Extent& extend = part.kind.extend[static_cast<std::size_t>(along.axis)];
    const Rational& before = along.positive ? extend.low : extend.high;
    const Rational& after = along.positive ? extend.high : extend.low;
    const auto point = [&](double place) {
        return run == Run::across ? Point{place, outline} : Point{outline, place};
    };
    const auto draw = [&](double from, double to, double line, const Rational& length, Overflow overflow) {
        draw_dimension(sheet, {run, point(from), point(to), line, part.text(length), overflow},
                       part.context.fonts);
    };
    const bool joined = before != 0 || after != 0;
    if (joined) {
        if (before != 0) draw(at.start, at.body_start, first, before, Overflow::beyond_low);
        draw(at.body_start, at.body_end, first, part.kind.size[along.axis], Overflow::over);
        if (after != 0) draw(at.body_end, at.end, first, after, Overflow::beyond_high);
    }
    draw(at.start, at.end, joined ? first + step : first, part.kind.overall(along.axis),
         Overflow::beyond_high);
}

// Double-headed, along the fibres, with the word beside it.
void draw_grain_arrow(Sheet& sheet, Point left) {
    constexpr double length = 16;
    const Point right = left + Point{length, 0};
    sheet.line(LineRole::dimension, left, right);
    draw_arrowhead(sheet, left, {-1, 0});
    draw_arrowhead(sheet, right, {1, 0});
    sheet.text({"grain", FontFace::regular, 2.5, right + Point{2, -1.25}, Align::left, false});
}

// How much height the dimensions under the front view take.
double strip_below(const std::vector<Station>& stations, const Kind& kind, const Fonts& fonts) {
    const bool joined = kind.extend[0].low != 0 || kind.extend[0].high != 0;
    const double running = stations.empty() ? 0 : first_dimension + running_depth(stations, fonts);
    const double lines = (stations.empty() ? first_dimension : 6) + (joined ? next_dimension : 0);
    return running + lines + line_end;
}

// The front view and, where it shows something, the one from above.
class LongViews {
  public:
    LongViews(const PartView& part, const AxisView& front)
        : part_(part),
          front_(front),
          above_(from_above(front)),
          front_lines_(part.seen(front)),
          above_lines_(part.seen(above_)),
          with_above_(!is_plain(above_lines_)) {}

    // The largest, up to full size, at which views and dimensions have room.
    Scale scale(const Rect& room) const {
        const double width = part_.outline(front_).width();
        const std::span<const Scale> list = scales(part_.context.piece.style.unit);
        const auto found = std::find_if(list.begin(), list.end(), [&](const Scale& scale) {
            const double factor = scale.factor();
            return factor <= 1 && width * factor <= room.width() - 2 * margin &&
                   height(factor) <= room.height();
        });
        return found == list.end() ? list.back() : *found;
    }
    // What the views take of the sheet at that scale.
    double height(double factor) const {
        const double views =
            part_.outline(front_).height() + (with_above_ ? part_.outline(above_).height() : 0);
        const RunningDimension running = running_below(0, 0, factor);
        const bool shown = fits(running, part_.context.fonts);
        const double strip =
            strip_below(shown ? running.stations : std::vector<Station>(), part_.kind, part_.context.fonts);
        return views * factor + strip + grain_strip + (with_above_ ? view_gap : 0);
    }

    void draw(Sheet& sheet, const Rect& room, double factor) const {
        const Rect outline = part_.outline(front_);
        const double front_height = outline.height() * factor;
        const double above_height = with_above_ ? part_.outline(above_).height() * factor + view_gap : 0;
        const double left = room.left + (room.width() - outline.width() * factor) / 2;
        draw_grain_arrow(sheet, {left, room.top - 3});
        const double top = room.top - grain_strip;
        const bool third = part_.context.projection == ProjectionMethod::third_angle;
        const double front_bottom = top - front_height - (third ? above_height : 0);
        const double lowest = top - front_height - above_height;
        const double above_bottom = third ? top - above_height + view_gap : lowest;
        place(sheet, front_lines_, front_, factor, {left, front_bottom});
        if (with_above_) place(sheet, above_lines_, above_, factor, {left, above_bottom});
        draw_dimensions(sheet, left + (part_.body(front_).left - outline.left) * factor, lowest, factor);
    }

  private:
    RunningDimension running_below(double body_left, double bottom, double factor) const {
        const Lengths lengths = lengths_of(part_, front_.right, body_left, factor);
        return {Run::across,
                bottom,
                bottom - first_dimension,
                lengths.body_start,
                stations_on_sheet(part_, front_.right, lengths.body_start, factor),
                lengths.body_start + 3,
                lengths.body_end - 3};
    }

    void place(Sheet& sheet, const Projected& lines, const AxisView& view, double factor,
               Point corner) const {
        const Rect outline = part_.outline(view);
        draw_view(sheet, lines, {factor, {outline.left, outline.bottom}, corner});
    }

    void draw_dimensions(Sheet& sheet, double body_left, double bottom, double factor) const {
        const Lengths lengths = lengths_of(part_, front_.right, body_left, factor);
        const RunningDimension running = running_below(body_left, bottom, factor);
        double line = bottom - first_dimension;
        if (!running.stations.empty() && fits(running, part_.context.fonts)) {
            draw_running(sheet, running, part_.context.fonts);
            line -= running_depth(running.stations, part_.context.fonts) + 6;
        }
        draw_lengths(sheet, part_, Run::across, front_.right, lengths, bottom, line, -next_dimension);
    }

    const PartView& part_;
    AxisView front_;
    AxisView above_;
    Projected front_lines_;
    Projected above_lines_;
    bool with_above_;
};

// The end view with the space its dimensions take on each side.
class EndView {
  public:
    EndView(const PartView& part, const AxisView& end)
        : part_(part), end_(end), outline_(part.outline(end)), fonts_(part.context.fonts) {
        const std::vector<Station> across = stations_on_sheet(part, end.right, 0, 1);
        const std::vector<Station> upright = stations_on_sheet(part, end.up, 0, 1);
        left_ = first_dimension + joint_line(end.up) + 5;
        over_ = first_dimension + joint_line(end.right) + 5;
        right_ = upright.empty() ? 4 : first_dimension + running_depth(upright, fonts_);
        under_ = caption_strip + (across.empty() ? 0 : first_dimension + running_depth(across, fonts_));
    }

    void draw(Sheet& sheet, const Rect& room) const {
        const Scale scale =
            choose_scale(part_.context.piece.style.unit, outline_.width(), outline_.height(),
                         room.width() - left_ - right_, room.height() - over_ - under_, {2, 1});
        const Point corner{room.left + left_, room.top - over_ - outline_.height() * scale.factor()};
        const ViewPlace place{scale.factor(), {outline_.left, outline_.bottom}, corner};
        draw_view(sheet, part_.seen(end_), place);
        draw_sizes(sheet, place);
        draw_stations(sheet, place, room);
        const std::string caption = "Right end, scale " + scale.text();
        sheet.text(
            fitted({caption, FontFace::regular, 2.5, {room.left, room.bottom + 1.5}, Align::left, false},
                   room.width(), fonts_));
    }

  private:
    double joint_line(Direction along) const {
        const Extent& extend = part_.kind.extend[static_cast<std::size_t>(along.axis)];
        return extend.low != 0 || extend.high != 0 ? next_dimension : 0;
    }

    void draw_sizes(Sheet& sheet, const ViewPlace& place) const {
        const Rect box = place.on_sheet(outline_);
        const Rect body = place.on_sheet(part_.body(end_));
        const Lengths sideways = lengths_of(part_, end_.right, body.left, place.factor);
        const Lengths up = lengths_of(part_, end_.up, body.bottom, place.factor);
        draw_lengths(sheet, part_, Run::across, end_.right, sideways, box.top, box.top + first_dimension,
                     next_dimension);
        draw_lengths(sheet, part_, Run::upright, end_.up, up, box.left, box.left - first_dimension,
                     -next_dimension);
    }

    void draw_stations(Sheet& sheet, const ViewPlace& place, const Rect& room) const {
        const Rect box = place.on_sheet(outline_);
        const Rect body = place.on_sheet(part_.body(end_));
        const RunningDimension sideways{Run::across,
                                        box.bottom,
                                        box.bottom - first_dimension,
                                        body.left,
                                        stations_on_sheet(part_, end_.right, body.left, place.factor),
                                        room.left + 3,
                                        room.right - 3};
        const RunningDimension up{Run::upright,
                                  box.right,
                                  box.right + first_dimension,
                                  body.bottom,
                                  stations_on_sheet(part_, end_.up, body.bottom, place.factor),
                                  room.bottom + under_,
                                  room.top - 3};
        if (fits(sideways, fonts_)) draw_running(sheet, sideways, fonts_);
        if (fits(up, fonts_)) draw_running(sheet, up, fonts_);
    }

    const PartView& part_;
    AxisView end_;
    Rect outline_;
    const Fonts& fonts_;
    double left_ = 0;  // mm kept free around the view
    double right_ = 0;
    double over_ = 0;
    double under_ = 0;
};

View pictorial_view(const AxisView& front) {
    const Point3 right = vector_of(front.right);
    const Point3 up = vector_of(front.up);
    const Point3 towards = vector_of(front.towards);
    View view;
    view.up = up;
    for (std::size_t i = 0; i < 3; ++i) view.towards[i] = right[i] + up[i] + towards[i];
    return view;
}

void draw_small_pictorials(Sheet& sheet, const Context& context, KindId kind, const AxisView& front,
                           const Rect& room) {
    std::vector<KindId> shown = mirrors_of(context.piece, kind);
    shown.insert(shown.begin(), kind);
    const double height = room.height() / static_cast<double>(shown.size());
    Rect strip{room.left, room.top - height, room.right, room.top};
    for (const KindId each : shown) {
        const SolidRef solid = context.input.solids.solid(each);
        const Rect box{strip.left, strip.bottom + caption_strip, strip.right, strip.top};
        if (solid) draw_pictorial(sheet, context, {{solid, {}, 0}}, {each}, pictorial_view(front), box);
        const Kind& own = context.piece[each];
        const std::string caption =
            each == kind ? own.letter : own.letter + ", opposite hand of " + context.piece[kind].letter;
        sheet.text(fitted(
            {caption, FontFace::regular, 2.5, {strip.centre().x, strip.bottom + 1.5}, Align::middle, false},
            strip.width(), context.fonts));
        strip = {strip.left, strip.bottom - height, strip.right, strip.bottom};
    }
}

}  // namespace

std::string draw_part_views(Sheet& sheet, const Context& context, KindId kind, const AxisView& front,
                            const Rect& room) {
    const PartView part{context, context.piece[kind], context.input.solids.solid(kind)};
    if (!part.solid) return "";
    // The long views come first; what they leave is the end view's, up to a size that needs no more.
    constexpr double least_lower = 62;
    constexpr double most_lower = 130;
    constexpr double gap = 4;
    const LongViews views(part, front);
    const Scale scale = views.scale({room.left, room.bottom + least_lower + gap, room.right, room.top});
    const double left_over = room.height() - views.height(scale.factor()) - gap;
    const double lower = std::clamp(left_over, least_lower, most_lower);
    views.draw(sheet, {room.left, room.bottom + lower + gap, room.right, room.top}, scale.factor());
    const double middle = room.left + 0.58 * room.width();
    EndView(part, from_side(front, true))
        .draw(sheet, {room.left, room.bottom, middle - gap, room.bottom + lower});
    draw_small_pictorials(sheet, context, kind, front,
                          {middle, room.bottom, room.right, room.bottom + lower});
    return scale.text();
}

}  // namespace rodwright::packet
