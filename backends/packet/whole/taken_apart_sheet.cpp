// The piece taken apart: every part moved out along the way it goes in, trails from where it came, letters.
#include <algorithm>
#include <cmath>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/balloon.hpp"
#include "backends/drawing/depth_buffer.hpp"
#include "backends/drawing/text_flow.hpp"
#include "backends/packet/joints/parting.hpp"
#include "backends/packet/pictorials.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/whole/whole_views.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double side_strip = 14;  // a column of letters beside the picture

Point3 plus(const Point3& a, const Point3& b) {
    return {a[0] + b[0], a[1] + b[1], a[2] + b[2]};
}

// From where a joint's second member has it to where the first member does.
struct Trail {
    Point3 from;
    Point3 to;
};

std::vector<Trail> trails(const Piece& piece, const std::vector<PartId>& parts,
                          const std::vector<Point3>& moves) {
    std::vector<Trail> found;
    const auto drawn = [&](const JointMember& member) {
        return std::ranges::binary_search(parts, member.part);
    };
    for (const Joint& joint : piece.joints) {
        if (!drawn(joint.members[0]) || !drawn(joint.members[1])) continue;
        const Point3 at = point3_of(joint.frame.origin);
        found.push_back({plus(at, moves[static_cast<std::size_t>(joint.members[1].part)]),
                         plus(at, moves[static_cast<std::size_t>(joint.members[0].part)])});
    }
    return found;
}

// The pieces of a trail that no part hides.
void draw_trail(Sheet& sheet, const Scene& scene, const ViewPlace& place, const Trail& trail) {
    const Point3 from = scene.axes().seen(trail.from);
    const Point3 to = scene.axes().seen(trail.to);
    const auto at = [&](double part) {
        return Point3{from[0] + (to[0] - from[0]) * part, from[1] + (to[1] - from[1]) * part,
                      from[2] + (to[2] - from[2]) * part};
    };
    const auto on_sheet = [&](double part) { return place.on_sheet(Point{at(part)[0], at(part)[1]}); };
    const auto seen = [&](double part) {
        const Point3 point = at(part);
        return scene.at({point[0], point[1]}).depth < point[2] + 0.01;
    };
    constexpr int steps = 60;
    int first = -1;
    for (int i = 0; i <= steps; ++i) {
        const bool shown = i < steps && seen((i + 0.5) / steps);
        if (shown && first < 0) first = i;
        if (shown || first < 0) continue;
        sheet.line(LineRole::trail, on_sheet(static_cast<double>(first) / steps),
                   on_sheet(static_cast<double>(i) / steps));
        first = -1;
    }
}

// Where a kind's letter points: at the middle of the copy that shows most.
struct Target {
    std::size_t pixels = 0;
    Point at;
};

std::vector<Target> targets(const Context& context, const Pictorial& pictorial) {
    constexpr std::size_t pixels = 300;
    const PixelGrid grid = pixel_grid(pictorial.lines.bounds, pixels);
    const std::vector<std::uint32_t> seen = parts_seen(pictorial.parts, pictorial.from, grid);
    std::vector<std::size_t> counts(context.piece.parts.size());
    for (const std::uint32_t tag : seen) {
        if (tag != no_part) ++counts[tag];
    }
    std::vector<Target> found(context.piece.kinds.size());
    for (std::size_t part = 0; part < counts.size(); ++part) {
        Target& target = found[static_cast<std::size_t>(context.piece.parts[part].kind)];
        if (counts[part] <= target.pixels) continue;
        target = {counts[part], inmost_point(seen, grid, static_cast<std::uint32_t>(part))};
    }
    return found;
}

// Letters stand left or right of the picture, whichever is nearer, half of them on either side.
void draw_side_letters(Sheet& sheet, const Context& context, const Pictorial& pictorial, const Rect& room) {
    const std::vector<Target> found = targets(context, pictorial);
    std::vector<Callout> callouts;
    for (std::size_t kind = 0; kind < found.size(); ++kind) {
        if (found[kind].pixels == 0) continue;
        callouts.push_back({context.piece.kinds[kind].letter, pictorial.place.on_sheet(found[kind].at)});
    }
    std::stable_sort(callouts.begin(), callouts.end(),
                     [](const Callout& a, const Callout& b) { return a.target.x < b.target.x; });
    const auto middle = callouts.begin() + static_cast<std::ptrdiff_t>(callouts.size() / 2);
    const double low = room.bottom + balloon_radius;
    const double high = room.top - balloon_radius;
    draw_callouts(sheet, {callouts.begin(), middle}, {Run::upright, room.left + balloon_radius, low, high},
                  context.fonts);
    draw_callouts(sheet, {middle, callouts.end()}, {Run::upright, room.right - balloon_radius, low, high},
                  context.fonts);
}

// Letters and what they stand for, in columns at the foot of the room.
void draw_legend(Sheet& sheet, const Context& context, const Rect& room) {
    constexpr std::size_t columns = 3;
    const std::vector<Kind>& kinds = context.piece.kinds;
    const std::size_t each = (kinds.size() + columns - 1) / columns;
    const double width = room.width() / columns;
    for (std::size_t first = 0, column = 0; first < kinds.size(); first += each, ++column) {
        FlowBlock block;
        for (std::size_t i = first; i < std::min(first + each, kinds.size()); ++i) {
            block.paragraphs.push_back(kinds[i].letter + "\u00a0 " + plain_words(kinds[i].name) + ", " +
                                       std::to_string(kinds[i].parts.size()));
        }
        const double left = room.left + width * static_cast<double>(column);
        draw_flow(sheet, {block}, {{left, room.bottom, left + width - 3, room.top}}, 2.5, context.fonts);
    }
}

std::vector<PlacedSolid> moved(const Context& context, const std::vector<PartId>& parts,
                               const std::vector<Point3>& moves) {
    std::vector<PlacedSolid> placed;
    for (const PlacedSolid& each : context.placed) {
        if (!std::ranges::binary_search(parts, static_cast<PartId>(each.tag))) continue;
        placed.push_back(each);
        placed.back().pose.move = plus(each.pose.move, moves[each.tag]);
    }
    return placed;
}

}  // namespace

double apart_by(const Piece& piece) {
    constexpr double share = 0.13;  // of the longest side
    double longest = 0;
    for (const Axis axis : all_axes) longest = std::max(longest, piece.box.size(axis).get_d());
    return share * longest;
}

void draw_moved(Sheet& sheet, const Context& context, const Rect& room, const PartLabel& label,
                const std::vector<PartId>& parts, const std::vector<Point3>& moves) {
    const Piece& piece = context.piece;
    const std::vector<PlacedSolid> solids = moved(context, parts, moves);
    std::vector<KindId> kinds;
    for (const PlacedSolid& each : solids) kinds.push_back(piece.parts[each.tag].kind);
    Rect middle = room;
    middle.left += side_strip;
    middle.right -= side_strip;
    const Pictorial pictorial = lay_out_pictorial(context, solids, kinds, isometric_view(), middle);
    pictorial.draw(sheet, label);
    const Scene scene(pictorial.parts, pictorial.from);
    for (const Trail& trail : trails(piece, parts, moves)) draw_trail(sheet, scene, pictorial.place, trail);
    draw_side_letters(sheet, context, pictorial, room);
}

void draw_taken_apart(Sheet& sheet, const Context& context, const Rect& room, const PartLabel& label) {
    const Piece& piece = context.piece;
    std::vector<PartId> all;
    for (std::size_t i = 0; i < piece.parts.size(); ++i) all.push_back(static_cast<PartId>(i));
    draw_moved(sheet, context, room, label, all, parting(piece, apart_by(piece)));
}

Draft taken_apart_sheet(const Context& context) {
    Draft draft = new_draft(context, "taken apart", "Taken apart");
    Rect room = drawing_room(draft.sheet.frame).grown(-sheet_edge);
    constexpr double legend = 0.14;  // of the room's height
    const double over_legend = room.bottom + legend * room.height();
    draw_legend(draft.sheet, context, {room.left, room.bottom, room.right, over_legend - sheet_edge});
    room.bottom = over_legend;
    draw_taken_apart(draft.sheet, context, room, {});
    return draft;
}

}  // namespace rodwright::packet
