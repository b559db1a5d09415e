// The general arrangement: three views in projection, overall and principal sizes, part letters.
#include <algorithm>
#include <optional>

#include "backends/drawing/dimension.hpp"
#include "backends/drawing/scale.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/whole/arrangement_view.hpp"
#include "backends/packet/whole/whole_views.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double frame_gap = 4;      // between the frame and what is drawn
constexpr double size_strip = 17;    // one dimension beside a view
constexpr double letter_strip = 16;  // a column of letters beside a view
constexpr double letter_column = 9;  // from the view to the middle of its letters
constexpr double letter_row = 14;    // a row of letters over a view
constexpr double between = 12;       // views one over another
constexpr double beside = 10;        // views side by side
constexpr double note_strip = 8;

// What is measured along one direction of the paper: stations from the left or from below, the whole last.
struct Sizes {
    Direction along;
    std::vector<Rational> principal;
    Rational whole;

    std::vector<Station> stations(const FigureStyle& style, double datum, double factor) const {
        std::vector<Station> found;
        for (const Rational& size : principal)
            found.push_back({datum + size.get_d() * factor, figure(size, style)});
        found.push_back({datum + whole.get_d() * factor, figure(whole, style)});
        return found;
    }
    // What they take of the paper beside the view.
    double strip(const Context& context) const {
        if (principal.empty()) return size_strip;
        const double depth = running_depth(stations(context.figures(), 0, 1), context.fonts);
        return std::max(size_strip, first_dimension + depth + 1);
    }
};

struct AllSizes {
    Sizes wide;
    Sizes tall;
    Sizes deep;
};

AllSizes sizes_of(const Context& context, const ArrangementViews& views, bool principal) {
    const auto along = [&](Direction direction) {
        Sizes sizes{direction, {}, context.piece.box.size(direction.axis)};
        if (principal) sizes.principal = principal_sizes(context, views, direction);
        return sizes;
    };
    return {along(views[0].view.right), along(views[0].view.up), along(views[2].view.right)};
}

// One way to lay the sheet out, and what it takes beside the views themselves.
struct Layout {
    AllSizes sizes;
    bool letters_over = false;  // in rows over the views, else in columns right of them
    Scale scale;
    double left = 0;  // mm
    double below = 0;
    double middle = 0;  // between front and side
    double right = 0;
    double apart = 0;  // between front and plan
    double over = 0;

    double across() const { return left + middle + right + 2 * frame_gap; }
    double upright() const { return below + apart + over + note_strip + 2 * frame_gap; }
};

Layout layout_of(const Context& context, AllSizes sizes, bool letters_over) {
    Layout layout;
    layout.letters_over = letters_over;
    layout.left = sizes.tall.strip(context);
    layout.below = std::max(sizes.wide.strip(context), sizes.deep.strip(context));
    layout.middle = letters_over ? beside : letter_strip;
    layout.right = letters_over ? 0 : letter_strip - frame_gap;
    layout.apart = letters_over ? letter_row + frame_gap : between;
    layout.over = letters_over ? letter_row : 0;
    layout.sizes = std::move(sizes);
    return layout;
}

// Of all ways the one with the largest scale; principal sizes, then letters beside the views, where that
// costs nothing.
Layout choose_layout(const Context& context, const ArrangementViews& views, const Rect& room) {
    const auto& [front, plan, side] = views;
    std::optional<Layout> best;
    for (const bool principal : {true, false}) {
        for (const bool letters_over : {false, true}) {
            Layout layout = layout_of(context, sizes_of(context, views, principal), letters_over);
            layout.scale = choose_scale(context.piece.style.unit, front.width() + side.width(),
                                        front.height() + plan.height(), room.width() - layout.across(),
                                        room.height() - layout.upright());
            if (!best || layout.scale.factor() > best->scale.factor()) best = std::move(layout);
        }
    }
    return std::move(*best);
}

BalloonLine letters_at(const Rect& box, bool over) {
    constexpr double inset = balloon_radius - 1;
    if (over) {
        return {Run::across, box.top + letter_column, box.left + inset,
                std::max(box.left + inset, box.right - inset)};
    }
    const double low = box.bottom + inset;
    const double high = std::max(box.top - inset, low) + between - 2 * balloon_radius;
    return {Run::upright, box.right + letter_column, low, high};
}

// Puts the lower left corner of a view there.
void stand(ArrangementView& view, const Layout& layout, Point corner) {
    view.place = {layout.scale.factor(), {view.lines.bounds.left, view.lines.bounds.bottom}, corner};
    view.letters = letters_at(view.on_sheet(), layout.letters_over);
}

// What is left over of the room is shared out evenly around the views.
void stand_all(ArrangementViews& views, const Layout& layout, const Rect& room, ProjectionMethod method) {
    auto& [front, plan, side] = views;
    const double factor = layout.scale.factor();
    const double width = (front.width() + side.width()) * factor + layout.across();
    const double height = (front.height() + plan.height()) * factor + layout.upright();
    const double left = room.left + (room.width() - width) / 2 + frame_gap + layout.left;
    const double bottom = room.bottom + (room.height() - height) / 2 + frame_gap + note_strip + layout.below;
    const bool third = method == ProjectionMethod::third_angle;
    const double upper = bottom + layout.apart + (third ? front.height() : plan.height()) * factor;
    const double front_bottom = third ? bottom : upper;
    stand(front, layout, {left, front_bottom});
    stand(plan, layout, {left, third ? upper : bottom});
    stand(side, layout, {left + front.width() * factor + layout.middle, front_bottom});
    if (layout.letters_over) return;
    const double most = room.top - frame_gap - balloon_radius;
    for (ArrangementView& view : views) view.letters.high = std::min(view.letters.high, most);
}

// Below a view (across) or left of it (upright): running from its left or lower end, or the whole alone where
// there is no more, or no room for more.
void draw_sizes(Sheet& sheet, const Context& context, const Sizes& sizes, Run run, const Rect& box,
                double factor) {
    const bool across = run == Run::across;
    const double outline = across ? box.bottom : box.left;
    const double datum = across ? box.left : box.bottom;
    const double end = across ? box.right : box.top;
    const double line = outline - first_dimension;
    const FigureStyle style = context.figures();
    const RunningDimension running{run,   outline, line, datum, sizes.stations(style, datum, factor),
                                   datum, end};
    if (!sizes.principal.empty() && fits(running, context.fonts)) {
        draw_running(sheet, running, context.fonts);
        return;
    }
    const auto point = [&](double along) { return across ? Point{along, outline} : Point{outline, along}; };
    draw_dimension(sheet, {run, point(datum), point(end), line, figure(sizes.whole, style)}, context.fonts);
}

void draw_all_sizes(Sheet& sheet, const Context& context, const ArrangementViews& views,
                    const Layout& layout) {
    const auto& [front, plan, side] = views;
    const double factor = layout.scale.factor();
    const bool third = context.projection == ProjectionMethod::third_angle;
    const Rect lowest = third ? front.on_sheet() : plan.on_sheet();
    draw_sizes(sheet, context, layout.sizes.wide, Run::across, lowest, factor);
    draw_sizes(sheet, context, layout.sizes.deep, Run::across, side.on_sheet(), factor);
    draw_sizes(sheet, context, layout.sizes.tall, Run::upright, front.on_sheet(), factor);
}

void draw_letters(Sheet& sheet, const Context& context, ArrangementViews& views, const Rect& room) {
    const std::vector<std::string> hidden = call_out(context, views);
    for (const ArrangementView& view : views)
        draw_callouts(sheet, view.callouts, view.letters, context.fonts);
    if (hidden.empty()) return;
    std::string note = "Not to be seen from outside:";
    for (const std::string& letter : hidden) note += " " + letter;
    sheet.text(
        fitted({note, FontFace::regular, 2.5, {room.left + frame_gap, room.bottom + 3}, Align::left, false},
               room.width() - 2 * frame_gap, context.fonts));
}

}  // namespace

std::string draw_arrangement(Sheet& sheet, const Context& context, const Rect& room, const PartLabel& label) {
    ArrangementViews views = arrangement_views(context);
    const Layout layout = choose_layout(context, views, room);
    stand_all(views, layout, room, context.projection);
    for (const ArrangementView& view : views) draw_view(sheet, view.lines, view.place, label);
    draw_all_sizes(sheet, context, views, layout);
    draw_letters(sheet, context, views, room);
    return layout.scale.text();
}

Draft arrangement_sheet(const Context& context) {
    Draft draft = new_draft(context, "general arrangement", "General arrangement");
    draft.block.scale = draw_arrangement(draft.sheet, context, drawing_room(draft.sheet.frame), {});
    draft.block.projection = context.projection;
    return draft;
}

}  // namespace rodwright::packet
