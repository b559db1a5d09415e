#include "backends/packet/parts/part_cuts.hpp"

#include <algorithm>
#include <optional>
#include <tuple>

#include "backends/drawing/dimension.hpp"
#include "backends/drawing/ink.hpp"
#include "backends/drawing/scale.hpp"
#include "backends/drawing/section.hpp"
#include "backends/packet/parts/part_geometry.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

constexpr std::size_t most_cuts = 3;

// Pockets that a cut through any of them shows.
struct Pockets {
    std::string made_by;
    Box like;  // the first of them
    std::vector<Box> all;

    bool alike(const std::string& by, const Box& other) const {
        const auto same = [&](Axis axis) {
            return like.low[axis] == other.low[axis] && like.high[axis] == other.high[axis];
        };
        return made_by == by && like.size(Axis::wide) == other.size(Axis::wide) && same(Axis::deep) &&
               same(Axis::tall);
    }
    bool cut_at(const Rational& at) const {
        return std::any_of(all.begin(), all.end(), [&](const Box& box) {
            return box.low[Axis::wide] < at && at < box.high[Axis::wide];
        });
    }
};

bool reaches(const Box& extent, const Box& body, Direction side) {
    return side.positive ? extent.high[side.axis] >= body.high[side.axis]
                         : extent.low[side.axis] <= body.low[side.axis];
}

std::vector<Pockets> hidden_pockets(const Kind& kind, const std::vector<Direction>& looked_at) {
    const Box stock = overall_box(kind);
    const Box body = visible_box(kind);
    std::vector<Pockets> hidden;
    for (const Feature& feature : kind.features) {
        if (feature.op != FeatureOp::remove || feature.body.form == BodyForm::cylinder) continue;
        const std::optional<Box> extent = extent_within(feature.body, stock);
        if (!extent) continue;
        const auto open_to = [&](Direction side) { return reaches(*extent, body, side); };
        if (std::any_of(looked_at.begin(), looked_at.end(), open_to)) continue;
        const auto same = [&](const Pockets& each) { return each.alike(feature.made_by, *extent); };
        auto at = std::find_if(hidden.begin(), hidden.end(), same);
        if (at == hidden.end()) at = hidden.insert(at, {feature.made_by, *extent, {}});
        at->all.push_back(*extent);
    }
    return hidden;
}

// The middle of a pocket; of a long one a place near its end, which no break of the drawing leaves out.
Rational place_in(const Box& pocket) {
    constexpr int near_end = 15;  // mm
    const Rational half = pocket.size(Axis::wide) / 2;
    return pocket.low[Axis::wide] + std::min(half, Rational(near_end));
}

}  // namespace

std::vector<PartCut> cuts_of(const Kind& kind, const std::vector<Direction>& looked_at) {
    std::vector<Pockets> left = hidden_pockets(kind, looked_at);
    std::vector<PartCut> cuts;
    while (!left.empty() && cuts.size() < most_cuts) {
        Rational best;
        std::ptrdiff_t most = 0;
        for (const Pockets& pockets : left) {
            for (const Box& pocket : pockets.all) {
                const Rational at = place_in(pocket);
                const auto shown = std::count_if(left.begin(), left.end(),
                                                 [&](const Pockets& each) { return each.cut_at(at); });
                if (shown <= most) continue;
                most = shown;
                best = at;
            }
        }
        std::erase_if(left, [&](const Pockets& each) { return each.cut_at(best); });
        cuts.push_back({std::string(1, static_cast<char>('A' + cuts.size())), best});
    }
    return cuts;
}

namespace {

constexpr double letter_height = 3.5;
constexpr double caption_height = 2.5;

// Where the letter of an arrow has room: beyond its tail, as near as can be, or on the other side of the
// plane.
std::optional<Text> letter_place(const Sheet& sheet, const std::string& letter, Point tail, double plane,
                                 const Fonts& fonts) {
    const Paper paper(sheet, fonts);
    constexpr double clear = 0.5;
    for (double away = 1; away < 12; away += 0.5) {
        for (const double x : {tail.x + away, plane - away - letter_height}) {
            const Text text{letter,      FontFace::bold, letter_height, {x, tail.y - letter_height / 2},
                            Align::left, false};
            if (paper.is_free(text_box(text, fonts).grown(clear))) return text;
        }
    }
    return std::nullopt;
}

// One end of a plane, outside of the view: a wide stub, and an arrow against it from where it is seen. Left
// out where a text is in the way: the other end says it too.
void draw_plane_end(Sheet& sheet, const std::string& letter, double x, double outline, double outwards,
                    const Fonts& fonts) {
    constexpr double gap = 0.8;
    constexpr double stub = 4;
    constexpr double shaft = 6;
    const Point near{x, outline + outwards * gap};
    const Point far{x, outline + outwards * (gap + stub)};
    const Point tip = far - Point{0, outwards};
    const Point tail = tip + Point{shaft, 0};
    const Paper paper(sheet, fonts);
    if (!paper.crossings(near, far) || !paper.crossings(tip, tail)) return;
    sheet.line(LineRole::cutting_plane, near, far);
    sheet.line(LineRole::dimension, tail, tip);
    draw_arrowhead(sheet, tip, {-1, 0});
    if (auto text = letter_place(sheet, letter, tail, x, fonts)) sheet.text(std::move(*text));
}

Section section_at(const PartView& part, const AxisView& front, const Rational& at) {
    constexpr double clear = 100;  // mm: the drawing ends nowhere but at the wood
    Bounds around = part.bounds;
    for (std::size_t i = 0; i < 3; ++i) {
        around.low[i] -= clear;
        around.high[i] += clear;
    }
    Point3 point{};
    point[static_cast<std::size_t>(Axis::wide)] = at.get_d();
    return section_through(part.context.kernel, {{part.solid, {}, 0}}, from_side(front, true), point, around);
}

}  // namespace

void draw_cutting_planes(Sheet& sheet, const std::vector<PartCut>& cuts, const PartView& part,
                         const DrawnView& front, const Fonts& fonts) {
    const Rect outline = part.outline(front.view);
    for (const PartCut& cut : cuts) {
        Point3 point{};
        point[static_cast<std::size_t>(Axis::wide)] = cut.at.get_d();
        const double across = front.view.on_paper(point).x;
        const Point low = front.on_sheet({across, outline.bottom});
        const Point high = front.on_sheet({across, outline.top});
        sheet.line(LineRole::centre, low, high);
        draw_plane_end(sheet, cut.letter, high.x, high.y, 1, fonts);
        draw_plane_end(sheet, cut.letter, low.x, low.y, -1, fonts);
    }
}

void draw_part_sections(Sheet& sheet, const PartView& part, const AxisView& front,
                        const std::vector<PartCut>& cuts, const Rect& room) {
    constexpr double margin = 3;
    const double share = room.width() / static_cast<double>(cuts.size());
    const Rect outline = part.outline(from_side(front, true));
    const Scale scale = choose_scale(part.context.piece.style.unit, outline.width(), outline.height(),
                                     share - 2 * margin, room.height() - caption_strip - margin, {2, 1});
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        const double left = room.left + share * static_cast<double>(i);
        const Point middle{left + share / 2, (room.bottom + caption_strip + room.top) / 2};
        draw_section(sheet, section_at(part, front, cuts[i].at), {scale.factor(), outline.centre(), middle});
        const std::string caption = cuts[i].letter + "-" + cuts[i].letter + ", scale " + scale.text();
        sheet.text(fitted(
            {caption, FontFace::regular, caption_height, {middle.x, room.bottom + 1.5}, Align::middle, false},
            share - margin, part.context.fonts));
    }
}

}  // namespace rodwright::packet
