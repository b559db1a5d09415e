#include "backends/packet/parts/part_views.hpp"

#include <algorithm>
#include <span>

#include "backends/packet/parts/end_view.hpp"
#include "backends/packet/parts/long_views.hpp"
#include "backends/packet/pictorials.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr double under_gap = 4;  // between the long views and what stands under them

View pictorial_view(const AxisView& front) {
    const Point3 right = vector_of(front.right);
    const Point3 up = vector_of(front.up);
    const Point3 towards = vector_of(front.towards);
    View view;
    view.up = up;
    for (std::size_t i = 0; i < 3; ++i) view.towards[i] = right[i] + up[i] + towards[i];
    return view;
}

// One below another, or side by side where the room is wide.
std::vector<Rect> shares_of(const Rect& room, std::size_t count) {
    const auto n = static_cast<double>(count);
    const bool beside = room.width() > 1.5 * room.height();
    const double width = beside ? room.width() / n : room.width();
    const double height = beside ? room.height() : room.height() / n;
    std::vector<Rect> shares;
    for (std::size_t i = 0; i < count; ++i) {
        const double left = room.left + (beside ? width * static_cast<double>(i) : 0);
        const double top = room.top - (beside ? 0 : height * static_cast<double>(i));
        shares.push_back({left, top - height, left + width, top});
    }
    return shares;
}

void draw_small_pictorials(Sheet& sheet, const Context& context, KindId kind, const AxisView& front,
                           const Rect& room) {
    std::vector<KindId> shown = mirrors_of(context.piece, kind);
    shown.insert(shown.begin(), kind);
    const std::vector<Rect> shares = shares_of(room, shown.size());
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const Rect& share = shares[i];
        const SolidRef solid = context.input.solids.solid(shown[i]);
        const Rect box{share.left + 2, share.bottom + caption_strip, share.right - 2, share.top};
        if (solid) {
            lay_out_pictorial(context, {{solid, {}, 0}}, {shown[i]}, pictorial_view(front), box).draw(sheet);
        }
        const std::string& letter = context.piece[shown[i]].letter;
        const std::string caption =
            i == 0 ? letter : letter + ", opposite hand of " + context.piece[kind].letter;
        sheet.text(fitted(
            {caption, FontFace::regular, 2.5, {share.centre().x, share.bottom + 1.5}, Align::middle, false},
            share.width(), context.fonts));
    }
}

// How a room is shared out: the long views at a scale, and the height left under them.
struct Split {
    Scale scale;
    double lower = 0;
};

// The largest scale, up to full size, at which the views and `lower_at(factor)` under them have room.
template <typename LowerAt>
Split split(const LongViews& views, const Rect& room, LengthUnit unit, double most_lower, LowerAt lower_at) {
    const std::span<const Scale> list = scales(unit);
    const auto found = std::find_if(list.begin(), list.end(), [&](const Scale& scale) {
        const double factor = scale.factor();
        return factor <= 1 &&
               views.fits_in(room.width(), room.height() - under_gap - lower_at(factor), factor);
    });
    const Scale scale = found == list.end() ? list.back() : *found;
    const double least = lower_at(scale.factor());
    const double left_over = room.height() - under_gap - views.height(scale.factor());
    return {scale, std::clamp(left_over, least, std::max(least, most_lower))};
}

}  // namespace

namespace {

// How the views of a part share its room.
struct Arrangement {
    LongViews views;
    Split split;
    bool with_end = false;
};

Arrangement arranged(const LongViews& views, const EndView& end, const Rect& room, LengthUnit unit) {
    const LongViews with_widths = views.with_widths();
    // An end view smaller than the views along the part tells nothing that they do not tell better.
    const Split by_end =
        split(views, room, unit, 130, [&](double factor) { return std::max(58.0, end.height(factor)); });
    const Split alone = split(with_widths, room, unit, 100, [](double) { return 36.0; });
    if (end.says_more() && by_end.scale.factor() >= alone.scale.factor()) return {views, by_end, true};
    return {with_widths, alone, false};
}

// Whole if that can be read; a stretch is left out where the scale would be small and a break makes it
// larger.
Arrangement best_arrangement(const LongViews& views, const EndView& end, const Rect& room, LengthUnit unit) {
    constexpr double readable = 0.25;
    constexpr double worth = 1.5;
    const Arrangement whole = arranged(views, end, room, unit);
    if (whole.split.scale.factor() >= readable) return whole;
    const std::optional<LongViews> broken = views.broken();
    if (!broken) return whole;
    const Arrangement larger = arranged(*broken, end, room, unit);
    return larger.split.scale.factor() >= worth * whole.split.scale.factor() ? larger : whole;
}

}  // namespace

namespace {

// Of the width under the long views.
struct Shares {
    double end = 0;
    double sections = 0;
};

Shares shares_of(bool with_end, std::size_t cuts) {
    if (cuts == 0) return {with_end ? 0.58 : 0, 0};
    if (!with_end) return {0, cuts == 1 ? 0.35 : 0.6};
    return {cuts == 1 ? 0.5 : 0.44, cuts == 1 ? 0.22 : 0.34};
}

// The left part of a room, which keeps the rest.
Rect take_left(Rect& room, double width) {
    const Rect taken{room.left, room.bottom, room.left + width - under_gap, room.top};
    room.left += width;
    return taken;
}

}  // namespace

std::string draw_part_views(Sheet& sheet, const Context& context, KindId kind, const AxisView& front,
                            const Rect& room) {
    const SolidRef solid = context.input.solids.solid(kind);
    if (!solid) return "";
    const PartView part{context, context.piece[kind], solid, context.kernel.bounds(*solid)};
    const EndView end(part, from_side(front, true));
    const Arrangement chosen = best_arrangement(LongViews(part, front), end, room, context.piece.style.unit);
    const Rect upper{room.left, room.bottom + chosen.split.lower + under_gap, room.right, room.top};
    Rect lower{room.left, room.bottom, room.right, room.bottom + chosen.split.lower};
    std::vector<Direction> looked_at = chosen.views.looked_at();
    if (chosen.with_end) looked_at.push_back(front.right);
    const std::vector<PartCut> cuts = cuts_of(part.kind, looked_at);
    const Shares shares = shares_of(chosen.with_end, cuts.size());
    DimensionedAxes dimensioned;
    if (chosen.with_end) dimensioned = end.draw(sheet, take_left(lower, shares.end * room.width()));
    if (!cuts.empty())
        draw_part_sections(sheet, part, front, cuts, take_left(lower, shares.sections * room.width()));
    chosen.views.draw(sheet, upper, chosen.split.scale.factor(), cuts, std::move(dimensioned));
    draw_small_pictorials(sheet, context, kind, front, lower);
    return chosen.split.scale.text();
}

}  // namespace rodwright::packet
