// Openings to rout through, the router guided by a bush round its bit.
#include <algorithm>
#include <numbers>

#include "backends/drawing/dimension.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/templates/body_outline.hpp"
#include "backends/packet/templates/joint_face.hpp"
#include "backends/packet/templates/templates.hpp"
#include "backends/words.hpp"
#include "compiler/workplan/operations/guide_bush.hpp"
#include "compiler/workplan/work_data.hpp"
#include "compiler/workplan/work_plan.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

struct Bit {
    std::string tool;  // "straight_bit"
    Rational size;
    std::optional<Rational> reach;  // the depth of the pocket that it is for; empty: any
};

std::optional<Rational> size_named(const ToolNeed::Alternative& alternative, const std::string& name) {
    for (const auto& [own, size] : alternative.sizes) {
        if (own == name && size.is_length()) return size.value;
    }
    return std::nullopt;
}

std::optional<Bit> bit_of(const ToolNeed& need) {
    const ToolNeed::Alternative* bit = template_bit(need);
    const std::optional<Rational> size = bit == nullptr ? std::nullopt : size_named(*bit, "");
    if (!size) return std::nullopt;
    return Bit{bit->tool, *size, size_named(*bit, "reach")};
}

const Shop& shop_of(const Context& context) {
    return context.input.work == nullptr ? embedded_work_data().shop : context.input.work->shop;
}

struct Opening {
    Bit bit;
    Rational bush;
    Extents pocket;  // what the bit cuts, on the paper of the view
    Extents opening;
    Extents part;
    Rational depth;
    std::string joint;
    std::string letter;
    std::string part_name;

    bool open_low() const { return pocket.low.u <= part.low.u; }
    bool open_high() const { return pocket.high.u >= part.high.u; }
    bool open_bottom() const { return pocket.low.v <= part.low.v; }
    bool open_top() const { return pocket.high.v >= part.high.v; }
    bool is_open() const { return open_low() || open_high() || open_bottom() || open_top(); }
    // One template serves for both.
    bool same_as(const Opening& other) const {
        return bit.tool == other.bit.tool && bit.size == other.bit.size && bush == other.bush &&
               opening.width() == other.opening.width() && opening.height() == other.opening.height() &&
               open_low() == other.open_low() && open_high() == other.open_high() &&
               open_bottom() == other.open_bottom() && open_top() == other.open_top();
    }
};

// Larger than the pocket by the offset all round; where the pocket is open, the bush runs out past the edge.
Extents opening_round(const Opening& own) {
    const Rational by = bush_offset(own.bush, own.bit.size);
    Extents opening{{own.pocket.low.u - by, own.pocket.low.v - by},
                    {own.pocket.high.u + by, own.pocket.high.v + by}};
    if (own.open_low()) opening.low.u = own.pocket.low.u - own.bush;
    if (own.open_high()) opening.high.u = own.pocket.high.u + own.bush;
    if (own.open_bottom()) opening.low.v = own.pocket.low.v - own.bush;
    if (own.open_top()) opening.high.v = own.pocket.high.v + own.bush;
    return opening;
}

// Where the members meet, or else the side that the pocket is open to.
AxisView view_of(const JointFace& face, const Feature& feature) {
    if (face.has(body_outline(feature.body, face.view))) return face.view;
    const Direction towards = open_side(face.kind, feature);
    return view_with(towards, {towards.axis == Axis::wide ? Axis::deep : Axis::wide, true});
}

std::optional<Opening> opening_for_feature(const Context& context, const Joint& joint, const JointFace& face,
                                           const Feature& feature, const Bit& bit) {
    const AxisView view = view_of(face, feature);
    const BodyOutline outline = body_outline(feature.body, view);
    Opening own{bit, {}, outline.all(), {}, on_paper(view, visible_box(face.kind)), {}, {}, {}, {}};
    own.depth = outline.front - outline.back;
    const bool round = feature.body.form == BodyForm::cylinder;
    const Rational narrow = std::min(own.pocket.width(), own.pocket.height());
    if (round || narrow < bit.size || (bit.reach && own.depth != *bit.reach)) return std::nullopt;
    const std::optional<Rational> bush = bush_for(shop_of(context), bit.size, context.piece.style.unit);
    if (!bush) return std::nullopt;
    own.bush = *bush;
    own.opening = opening_round(own);
    own.joint = plain_words(context.piece[joint.kind].work.definition);
    own.letter = face.kind.letter;
    own.part_name = plain_words(face.kind.name);
    return own;
}

std::vector<Opening> openings_of(const Context& context, const Joint& joint) {
    std::vector<Opening> found;
    for (const ToolNeed& need : context.piece[joint.kind].work.needs) {
        const std::optional<Bit> bit = bit_of(need);
        if (!bit) continue;
        for (std::size_t member = 0; member < joint.members.size(); ++member) {
            const JointFace face = joint_face(context.piece, joint, member);
            for (const Feature& feature : face.kind.features) {
                if (feature.op != FeatureOp::remove || feature.joint != joint.kind) continue;
                std::optional<Opening> own = opening_for_feature(context, joint, face, feature, *bit);
                if (own) found.push_back(std::move(*own));
            }
        }
    }
    return found;
}

// Centre lines, the pocket, the opening, and bush and bit in one corner of it.
void draw_opening(Sheet& sheet, const Opening& own, const Rect& opening) {
    const Rect pocket = own.pocket.rect();
    const Point middle = pocket.centre();
    sheet.line(LineRole::centre, {opening.left - 8, middle.y}, {opening.right + 8, middle.y});
    sheet.line(LineRole::centre, {middle.x, opening.bottom - 4}, {middle.x, opening.top + 8});
    sheet.rectangle(LineRole::hidden, pocket);
    sheet.rectangle(LineRole::visible, opening);
    const double bush = own.bush.get_d() / 2;
    const Point corner{opening.left + bush, opening.top - bush};
    sheet.circle(LineRole::dimension, corner, bush);
    sheet.circle(LineRole::dimension, corner, own.bit.size.get_d() / 2);
}

void draw_sizes(Sheet& sheet, const Context& context, const Opening& own, const Rect& opening) {
    const FigureStyle style = context.figures();
    draw_dimension(sheet,
                   {Run::across,
                    {opening.left, opening.bottom},
                    {opening.right, opening.bottom},
                    opening.bottom - first_dimension,
                    figure(own.opening.width(), style),
                    Overflow::beyond_high},
                   context.fonts);
    draw_dimension(sheet,
                   {Run::upright,
                    {opening.right, opening.bottom},
                    {opening.right, opening.top},
                    opening.right + first_dimension + 4,
                    figure(own.opening.height(), style),
                    Overflow::beyond_high},
                   context.fonts);
}

std::vector<std::string> opening_notes(const Context& context, const Opening& own) {
    const auto text = [&](const Rational& length) { return figure(length, context.figures()); };
    const std::string offset = text(bush_offset(own.bush, own.bit.size));
    std::vector<std::string> notes = {
        "Pocket " + text(own.pocket.width()) + " x " + text(own.pocket.height()) + ", " + text(own.depth) +
            " deep (dashed). Opening " + text(own.opening.width()) + " x " + text(own.opening.height()) + ".",
        "Guide bush " + text(own.bush) + ", " + plain_words(own.bit.tool) + " " + text(own.bit.size) +
            ": offset (" + text(own.bush) + " - " + text(own.bit.size) + ") / 2 = " + offset +
            ". The bush is the smallest at least " + text(least_clearance()) +
            " larger than the bit (common practice: room for the bit and its chips).",
        "Move the router clockwise round the inside of the opening. Line the centre lines up with the marks "
        "on "
        "the part."};
    if (own.is_open())
        notes.push_back("The pocket is open at the part's edge: there the opening runs " + text(own.bush) +
                        " past it; start and stop the router there.");
    notes.push_back("Corners come out round, radius " + text(Rational(own.bit.size / 2)) +
                    ": square them with a chisel where the joint asks for it.");
    return notes;
}

Template drawn_opening(const Context& context, const Opening& own, const std::vector<std::string>& parts,
                       std::size_t number) {
    Sheet sheet;
    const Rect opening = own.opening.rect();
    draw_opening(sheet, own, opening);
    draw_sizes(sheet, context, own, opening);
    std::vector<std::string> notes = opening_notes(context, own);
    notes.insert(notes.begin(), "For " + few_of(parts) + ".");
    return captioned(context, "", own.joint + ", to rout", notes, std::move(sheet),
                     file_name({"router", std::to_string(number), own.joint}));
}

}  // namespace

std::vector<Template> router_templates(const Context& context) {
    std::vector<Opening> distinct;
    std::vector<std::vector<std::string>> parts;
    for (const DistinctJoint& joint : distinct_joints(context.piece)) {
        if (joint.joints.empty()) continue;
        for (Opening& own : openings_of(context, context.piece[joint.joints.front()])) {
            const std::string part = own.letter + " " + own.part_name;
            const auto same = [&](const Opening& other) { return other.same_as(own); };
            const auto at = std::find_if(distinct.begin(), distinct.end(), same) - distinct.begin();
            if (at == std::ssize(distinct)) {
                distinct.push_back(std::move(own));
                parts.emplace_back();
            }
            std::vector<std::string>& named = parts[static_cast<std::size_t>(at)];
            if (std::find(named.begin(), named.end(), part) == named.end()) named.push_back(part);
        }
    }
    std::vector<Template> found;
    for (std::size_t i = 0; i < distinct.size(); ++i)
        found.push_back(drawn_opening(context, distinct[i], parts[i], i + 1));
    return found;
}

}  // namespace rodwright::packet
