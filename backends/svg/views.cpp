#include "backends/svg/views.hpp"

#include <functional>

#include "backends/drawing/axis_view.hpp"
#include "backends/drawing/seen.hpp"
#include "backends/packet/joints/parting.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/packet/parts/part_views.hpp"
#include "backends/packet/pictorials.hpp"
#include "backends/packet/whole/whole_views.hpp"
#include "backends/words.hpp"
#include "compiler/at_once.hpp"

namespace rodwright::svg {

using namespace drawing;
using packet::Context;

namespace {

constexpr Rect room{0, 0, 180, 240};  // mm: a drawing's scale is one that fits a page
constexpr Rect part_room{0, 0, 180, 150};
constexpr double margin = 2;

std::string part_words(const Kind& kind) {
    return "part " + kind.letter + ", " + plain_words(kind.name);
}

GroupStart group_of(const Context& context, std::uint32_t tag) {
    if (tag >= context.piece.parts.size()) return {"seen through openings", ""};
    const Part& part = context.piece.parts[tag];
    return {part_words(context.piece[part.kind]), packet::source_of(context, part.where)};
}

std::string sizes_of(const Context& context) {
    const auto size = [&](Axis axis) {
        return packet::quantity_figure(Quantity::length(context.piece.box.size(axis)), context.figures());
    };
    return size(Axis::wide) + " wide, " + size(Axis::deep) + " deep, " + size(Axis::tall) + " tall";
}

// The view's items in a group of its name, the frame around what is seen of them.
SvgView finished(const Context& context, std::string file, const std::string& title, std::string description,
                 Sheet sheet) {
    sheet.frame = seen_extent(sheet.items, context.fonts).value_or(room).grown(margin);
    sheet.title = context.piece.name + ": " + title;
    sheet.items.insert(sheet.items.begin(), GroupStart{title, ""});
    sheet.items.emplace_back(GroupEnd{});
    return {std::move(file), std::move(description), std::move(sheet)};
}

SvgView pictorial(const Context& context, const PartLabel& label) {
    std::vector<KindId> kinds;
    for (const PlacedSolid& placed : context.placed) kinds.push_back(context.piece.parts[placed.tag].kind);
    Sheet sheet;
    packet::lay_out_pictorial(context, context.placed, kinds, isometric_view(), room).draw(sheet, label);
    return finished(context, "pictorial", "pictorial view",
                    "The piece from above, in front and the right, in the colours of its wood. It is " +
                        sizes_of(context) + ", of " + counted(context.piece.parts.size(), "part") + ".",
                    std::move(sheet));
}

SvgView taken_apart(const Context& context, const PartLabel& label) {
    Sheet sheet;
    packet::draw_taken_apart(sheet, context, room, label);
    std::vector<std::string> legend;
    for (const Kind& kind : context.piece.kinds)
        legend.push_back(kind.letter + " " + plain_words(kind.name) + " (" +
                         std::to_string(kind.parts.size()) + ")");
    return finished(context, "taken-apart", "taken apart",
                    "Every part moved out along the way it goes in: " + joined(legend) + ".",
                    std::move(sheet));
}

SvgView arrangement(const Context& context, const PartLabel& label) {
    Sheet sheet;
    const std::string scale = packet::draw_arrangement(sheet, context, room, label);
    const bool third = context.projection == ProjectionMethod::third_angle;
    return finished(context, "arrangement", "general arrangement",
                    "Views from the front, from above and from the " + std::string(third ? "right" : "left") +
                        ", scale " + scale + ". The piece is " + sizes_of(context) + ".",
                    std::move(sheet));
}

SvgView part(const Context& context, KindId id) {
    const Kind& kind = context.piece[id];
    Sheet sheet;
    sheet.items.emplace_back(GroupStart{part_words(kind), packet::source_of(context, kind.where)});
    const std::string scale = packet::draw_part_views(sheet, context, id, packet::lying(kind), part_room);
    sheet.items.emplace_back(GroupEnd{});
    const auto size = [&](Axis axis) { return packet::figure(kind.overall(axis), context.figures()); };
    return finished(context, "part-" + kind.letter, part_words(kind),
                    "Make " + std::to_string(kind.parts.size()) + " of " +
                        wood_words(context.piece, kind.wood) + ": length " + size(Axis::wide) + ", width " +
                        size(Axis::deep) + ", thickness " + size(Axis::tall) + ". Scale " + scale + ".",
                    std::move(sheet));
}

}  // namespace

SvgView locked_view(const Context& context, const std::vector<PartId>& parts) {
    Sheet sheet;
    packet::draw_moved(
        sheet, context, room, [&](std::uint32_t tag) { return group_of(context, tag); }, parts,
        packet::parting(context.piece, packet::apart_by(context.piece)));
    std::vector<std::string> names;
    for (const PartId part : parts) {
        const Kind& kind = context.piece[context.piece[part].kind];
        names.push_back(kind.letter + " " + plain_words(context.piece[part].name));
    }
    return finished(context, "locked", "parts that lock each other",
                    "Moved out along the ways that they would go in, none of which is free at the last: " +
                        joined(names) + ".",
                    std::move(sheet));
}

std::vector<SvgView> views_of(const Context& context) {
    const PartLabel label = [&](std::uint32_t tag) { return group_of(context, tag); };
    std::vector<std::function<SvgView()>> works = {[&] { return pictorial(context, label); }};
    if (!context.piece.joints.empty()) works.push_back([&] { return taken_apart(context, label); });
    works.push_back([&] { return arrangement(context, label); });
    for (std::size_t i = 0; i < context.piece.kinds.size(); ++i) {
        if (!context.piece.kinds[i].mirror_of)
            works.push_back([&, i] { return part(context, static_cast<KindId>(i)); });
    }
    std::vector<SvgView> views(works.size());
    at_once(works.size(), [&](std::size_t i) { views[i] = works[i](); });
    return views;
}

}  // namespace rodwright::svg
