// The whole piece cut through twice: what is inside, and how the parts sit in one another.
#include <algorithm>

#include "backends/drawing/scale.hpp"
#include "backends/drawing/section.hpp"
#include "backends/drawing/text_flow.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/whole/arrangement_view.hpp"
#include "backends/packet/whole/whole_views.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double caption_height = 2.5;
constexpr double caption_strip = 12;  // two lines
constexpr double letters_strip = 16;
constexpr double letters_from_view = 9;

struct Cut {
    Direction towards;  // the viewer
    const char* way;    // "across"
    const char* from;   // the side that the cut is measured from
    const char* seen;   // the side that the viewer stands on
};
constexpr Cut along{{Axis::deep, false}, "along", "front", "front"};
constexpr Cut across{{Axis::wide, true}, "across", "left", "right"};

// The middle of the parts; or, where one begins or ends there, halfway on to where the next one does.
Rational place_of_cut(const std::set<Rational>& ends) {
    const Rational middle = (*ends.begin() + *ends.rbegin()) / 2;
    const auto next = ends.upper_bound(middle);
    return ends.contains(middle) && next != ends.end() ? Rational((middle + *next) / 2) : middle;
}

// Around all parts and what joints add to them.
Bounds window_around(const Piece& piece) {
    constexpr double clear = 1000;  // mm
    Bounds window;
    for (const Axis axis : all_axes) {
        const std::set<Rational> ends = ends_of_parts(piece, axis);
        window.low[static_cast<std::size_t>(axis)] = ends.begin()->get_d() - clear;
        window.high[static_cast<std::size_t>(axis)] = ends.rbegin()->get_d() + clear;
    }
    return window;
}

struct ShownCut {
    Section section;
    ArrangementView view;
    std::vector<std::string> caption;
};

ShownCut cut_through(const Context& context, const Cut& cut) {
    const Piece& piece = context.piece;
    const Axis axis = cut.towards.axis;
    const std::set<Rational> ends = ends_of_parts(piece, axis);
    const Rational at = place_of_cut(ends);
    Point3 point{};
    point[static_cast<std::size_t>(axis)] = at.get_d();
    const AxisView from = axis_view(cut.towards, {Axis::tall, true});
    ShownCut shown{section_through(context.kernel, context.placed, from, point, window_around(piece)),
                   {},
                   {std::string("Cut ") + cut.way + ", " + figure(at - *ends.begin(), context.figures()) +
                        " from the " + cut.from,
                    std::string("seen from the ") + cut.seen}};
    shown.view.view = from;
    shown.view.lines = shown.section.lines;
    constexpr std::size_t pixels = 300;
    shown.view.grid = pixel_grid(shown.view.lines.bounds, pixels);
    shown.view.seen = parts_seen(shown.section.parts(), from.view(), shown.view.grid);
    return shown;
}

// Both side by side, or one over the other: as the larger scale has it.
struct Places {
    Scale scale;
    std::array<Rect, 2> rooms;
};

Scale scale_in(const Context& context, const std::array<ShownCut, 2>& cuts,
               const std::array<Rect, 2>& rooms) {
    std::optional<Scale> smallest;
    for (std::size_t i = 0; i < 2; ++i) {
        const Scale scale =
            choose_scale(context.piece.style.unit, cuts[i].view.width(), cuts[i].view.height(),
                         rooms[i].width() - letters_strip, rooms[i].height() - caption_strip);
        if (!smallest || scale.factor() < smallest->factor()) smallest = scale;
    }
    return *smallest;
}

Places places_in(const Context& context, const std::array<ShownCut, 2>& cuts, const Rect& room) {
    const double width = cuts[0].view.width() / (cuts[0].view.width() + cuts[1].view.width());
    const double split = room.left + letters_strip + (room.width() - 2 * letters_strip) * width;
    const double height = cuts[0].view.height() / (cuts[0].view.height() + cuts[1].view.height());
    const double level = room.top - caption_strip - (room.height() - 2 * caption_strip - sheet_edge) * height;
    const std::array<Rect, 2> beside = {Rect{room.left, room.bottom, split, room.top},
                                        Rect{split, room.bottom, room.right, room.top}};
    const std::array<Rect, 2> stacked = {Rect{room.left, level, room.right, room.top},
                                         Rect{room.left, room.bottom, room.right, level - sheet_edge}};
    const Scale wide = scale_in(context, cuts, beside);
    const Scale tall = scale_in(context, cuts, stacked);
    if (wide.factor() >= tall.factor()) return {wide, beside};
    return {tall, stacked};
}

void stand_in(ArrangementView& view, double factor, const Rect& room) {
    const Rect& extent = view.lines.bounds;
    const Rect inner{room.left, room.bottom + caption_strip, room.right - letters_strip, room.top};
    view.place = {factor, extent.centre(), inner.centre()};
    const Rect box = view.on_sheet();
    view.letters = {Run::upright, box.right + letters_from_view, box.bottom, std::max(box.bottom, box.top)};
}

void draw_caption(Sheet& sheet, const Context& context, const ShownCut& cut, const Rect& room) {
    const Rect box = cut.view.on_sheet();
    double baseline = box.bottom - caption_height - 3;
    for (const std::string& line : cut.caption) {
        sheet.text(fitted(
            {line, FontFace::regular, caption_height, {box.centre().x, baseline}, Align::middle, false},
            room.width(), context.fonts));
        baseline -= line_pitch * caption_height;
    }
}

}  // namespace

Draft section_sheet(const Context& context) {
    Draft draft = new_draft(context, "sections", "General arrangement, sections");
    const Rect room = drawing_room(draft.sheet.frame).grown(-sheet_edge);
    std::array<ShownCut, 2> cuts = {cut_through(context, along), cut_through(context, across)};
    const Places places = places_in(context, cuts, room);
    std::array<ArrangementView, 2> views;
    for (std::size_t i = 0; i < 2; ++i) {
        stand_in(cuts[i].view, places.scale.factor(), places.rooms[i]);
        draw_section(draft.sheet, cuts[i].section, cuts[i].view.place);
        draw_caption(draft.sheet, context, cuts[i], places.rooms[i]);
        views[i] = cuts[i].view;
    }
    call_out(context, views);
    for (const ArrangementView& view : views)
        draw_callouts(draft.sheet, view.callouts, view.letters, context.fonts);
    draft.block.scale = places.scale.text();
    return draft;
}

}  // namespace rodwright::packet
