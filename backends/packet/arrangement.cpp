// The general arrangement: three views in projection, overall sizes, part letters.
#include <algorithm>
#include <map>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/balloon.hpp"
#include "backends/drawing/dimension.hpp"
#include "backends/drawing/projected.hpp"
#include "backends/drawing/scale.hpp"
#include "backends/packet/sheets.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double edge = 4;           // between the frame and what is drawn
constexpr double size_strip = 17;    // one dimension beside a view
constexpr double letter_strip = 19;  // a column of letters beside a view
constexpr double between = 12;
constexpr double note_strip = 8;
constexpr std::size_t enough = 12;  // pixels of a part in a view: less is a sliver nobody can point at

struct Figure {
    AxisView view;
    Projected lines;
    ViewPlace place;
    std::vector<std::uint32_t> seen;
    PixelGrid grid;
    std::vector<Callout> callouts;
    double low = 0;  // where letters may stand
    double high = 0;
};

std::vector<ShadedPart> all_parts(const Context& context) {
    std::vector<ShadedPart> parts;
    for (const PlacedSolid& placed : context.placed) {
        const auto kind = static_cast<std::size_t>(context.piece.parts[placed.tag].kind);
        parts.push_back({&context.triangles[kind], placed.pose, placed.tag, black});
    }
    return parts;
}

Figure figure_from(const Context& context, const AxisView& view, const std::vector<ShadedPart>& parts) {
    Figure figure;
    figure.view = view;
    figure.lines = project(context.kernel, context.placed, view.view(), false);
    constexpr std::size_t pixels = 300;
    figure.grid = pixel_grid(figure.lines.bounds, pixels);
    figure.seen = parts_seen(parts, view.view(), figure.grid);
    return figure;
}

// Front, plan, side.
using Figures = std::array<Figure, 3>;

Figures all_figures(const Context& context) {
    const AxisView front = axis_view({Axis::deep, false}, {Axis::tall, true});
    const bool third = context.projection == ProjectionMethod::third_angle;
    const std::vector<ShadedPart> parts = all_parts(context);
    return {figure_from(context, front, parts), figure_from(context, from_above(front), parts),
            figure_from(context, from_side(front, third), parts)};
}

double width_of(const Figure& figure) {
    return figure.lines.bounds.width();
}
double height_of(const Figure& figure) {
    return figure.lines.bounds.height();
}

Scale scale_for(const Context& context, const Figures& figures, const Rect& room) {
    const auto& [front, plan, side] = figures;
    const double across = room.width() - 2 * edge - size_strip - 2 * letter_strip;
    const double upright = room.height() - 2 * edge - size_strip - between - note_strip;
    return choose_scale(context.piece.style.unit, width_of(front) + width_of(side),
                        height_of(front) + height_of(plan), across, upright);
}

// Puts the lower left corner of a view there.
void stand(Figure& figure, double factor, Point corner) {
    const Rect& bounds = figure.lines.bounds;
    figure.place = {factor, {bounds.left, bounds.bottom}, corner};
    const double top = corner.y + bounds.height() * factor;
    figure.low = corner.y + balloon_radius - 1;
    figure.high = std::max(top - balloon_radius + 1, figure.low);
}

// What is left over of the room is shared out evenly around the views.
void stand_all(Figures& figures, double factor, const Rect& room, ProjectionMethod method) {
    auto& [front, plan, side] = figures;
    const double width = (width_of(front) + width_of(side)) * factor + size_strip + 2 * letter_strip;
    const double height = (height_of(front) + height_of(plan)) * factor + size_strip + between + note_strip;
    const double left = room.left + (room.width() - width) / 2 + size_strip;
    const double bottom = room.bottom + (room.height() - height) / 2 + size_strip + note_strip;
    const bool third = method == ProjectionMethod::third_angle;
    const double upper = bottom + between + (third ? height_of(front) : height_of(plan)) * factor;
    const double front_bottom = third ? bottom : upper;
    stand(front, factor, {left, front_bottom});
    stand(plan, factor, {left, third ? upper : bottom});
    stand(side, factor, {left + width_of(front) * factor + letter_strip, front_bottom});
    const double most = room.top - edge - balloon_radius;
    for (Figure& figure : figures) figure.high = std::min(figure.high + between - 2 * balloon_radius, most);
}

void draw_sizes(Sheet& sheet, const Context& context, const Figures& figures) {
    const LengthStyle& style = context.piece.style;
    const Box& box = context.piece.box;
    const auto place_box = [](const Figure& figure) { return figure.place.on_sheet(figure.lines.bounds); };
    const Rect front = place_box(figures[0]);
    const Rect lowest = context.projection == ProjectionMethod::third_angle ? front : place_box(figures[1]);
    const Rect side = place_box(figures[2]);
    draw_dimension(sheet,
                   {Run::across,
                    {lowest.left, lowest.bottom},
                    {lowest.right, lowest.bottom},
                    lowest.bottom - first_dimension,
                    packet::figure(box.size(Axis::wide), style)},
                   context.fonts);
    draw_dimension(sheet,
                   {Run::across,
                    {side.left, side.bottom},
                    {side.right, side.bottom},
                    side.bottom - first_dimension,
                    packet::figure(box.size(Axis::deep), style)},
                   context.fonts);
    draw_dimension(sheet,
                   {Run::upright,
                    {front.left, front.bottom},
                    {front.left, front.top},
                    front.left - first_dimension,
                    packet::figure(box.size(Axis::tall), style)},
                   context.fonts);
}

std::map<std::uint32_t, std::size_t> pixels_of_parts(const Figure& figure) {
    std::map<std::uint32_t, std::size_t> pixels;
    for (const std::uint32_t tag : figure.seen) {
        if (tag != no_part) ++pixels[tag];
    }
    return pixels;
}

// Where a kind can be pointed at in a view.
struct Sight {
    std::size_t figure = 0;
    Point target;  // in the view's plane
    std::size_t pixels = 0;
};

// Of the copies that show about as well as the best, the one nearest to the column of letters at the right.
std::map<std::size_t, Sight> sights_in(const Context& context, const Figure& figure, std::size_t index) {
    const std::map<std::uint32_t, std::size_t> pixels = pixels_of_parts(figure);
    std::map<std::size_t, Sight> sights;
    const auto kind_of = [&](std::uint32_t tag) {
        return static_cast<std::size_t>(context.piece.parts[tag].kind);
    };
    for (const auto& [tag, count] : pixels) {
        std::size_t& most = sights[kind_of(tag)].pixels;
        most = std::max(most, count);
    }
    std::erase_if(sights, [](const auto& sight) { return sight.second.pixels < enough; });
    std::map<std::size_t, bool> known;
    for (const auto& [tag, count] : pixels) {
        const auto sight = sights.find(kind_of(tag));
        if (sight == sights.end() || 10 * count < 6 * sight->second.pixels) continue;
        const Point target = inmost_point(figure.seen, figure.grid, tag);
        if (known[sight->first] && target.x <= sight->second.target.x) continue;
        known[sight->first] = true;
        sight->second.figure = index;
        sight->second.target = target;
    }
    return sights;
}

std::vector<std::vector<Sight>> sights_of_kinds(const Context& context, const Figures& figures) {
    std::vector<std::vector<Sight>> sights(context.piece.kinds.size());
    for (std::size_t f = 0; f < figures.size(); ++f) {
        for (const auto& [kind, sight] : sights_in(context, figures[f], f)) sights[kind].push_back(sight);
    }
    for (auto& of_kind : sights) {
        std::stable_sort(of_kind.begin(), of_kind.end(),
                         [](const Sight& a, const Sight& b) { return a.pixels > b.pixels; });
    }
    return sights;
}

std::size_t capacity(const Figure& figure) {
    constexpr double pitch = 2 * balloon_radius + 1.2;
    return 1 + static_cast<std::size_t>(std::max(0.0, figure.high - figure.low) / pitch);
}

// Each kind in the view that shows it best and has room for its letter. Returns the letters that have no
// place.
std::vector<std::string> call_out(const Context& context, Figures& figures) {
    std::vector<std::string> hidden;
    const std::vector<std::vector<Sight>> sights = sights_of_kinds(context, figures);
    for (std::size_t k = 0; k < sights.size(); ++k) {
        const auto free = std::find_if(sights[k].begin(), sights[k].end(), [&](const Sight& sight) {
            return figures[sight.figure].callouts.size() < capacity(figures[sight.figure]);
        });
        if (free == sights[k].end()) {
            hidden.push_back(context.piece.kinds[k].letter);
            continue;
        }
        Figure& figure = figures[free->figure];
        figure.callouts.push_back({context.piece.kinds[k].letter, figure.place.on_sheet(free->target)});
    }
    return hidden;
}

void draw_letters(Sheet& sheet, const Context& context, Figures& figures, const Rect& room) {
    const std::vector<std::string> hidden = call_out(context, figures);
    for (const Figure& figure : figures) {
        const double column = figure.place.on_sheet(figure.lines.bounds).right + letter_strip - 8;
        draw_callouts(sheet, figure.callouts, column, figure.low, figure.high, context.fonts);
    }
    if (hidden.empty()) return;
    std::string note = "Not to be seen from outside:";
    for (const std::string& letter : hidden) note += " " + letter;
    sheet.text(fitted({note, FontFace::regular, 2.5, {room.left + edge, room.bottom + 3}, Align::left, false},
                      room.width() - 2 * edge, context.fonts));
}

}  // namespace

Draft arrangement_sheet(const Context& context) {
    Draft draft = new_draft(context, "general arrangement", "General arrangement");
    const Rect room = drawing_room(draft.sheet.frame);
    Figures figures = all_figures(context);
    const Scale scale = scale_for(context, figures, room);
    draft.block.scale = scale.text();
    draft.block.projection = context.projection;
    stand_all(figures, scale.factor(), room, context.projection);
    for (const Figure& figure : figures) draw_view(draft.sheet, figure.lines, figure.place);
    draw_sizes(draft.sheet, context, figures);
    draw_letters(draft.sheet, context, figures, room);
    return draft;
}

}  // namespace rodwright::packet
