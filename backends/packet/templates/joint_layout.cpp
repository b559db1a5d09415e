// Joints at full size as they are set out: the end of one member and the pocket in the other, to prick
// through onto the wood.
#include <algorithm>
#include <optional>
#include <set>

#include "backends/drawing/dimension.hpp"
#include "backends/packet/parts/part_geometry.hpp"
#include "backends/packet/sheets.hpp"
#include "backends/packet/templates/abridged.hpp"
#include "backends/packet/templates/joint_face.hpp"
#include "backends/packet/templates/templates.hpp"
#include "backends/words.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

struct Cut {
    const Body* body;
    BodyOutline outline;
    bool left = false;  // stands out of the part
};

struct Layout {
    const Context& context;
    const Joint& joint;
    JointFace face;
    std::vector<Cut> bodies;

    // What fills the whole meeting is marked from the other part.
    bool needs_setting_out() const {
        return std::any_of(bodies.begin(), bodies.end(), [&](const Cut& body) {
            return !(around(body.outline.near, face.contact) == body.outline.near);
        });
    }

    std::string text(const Rational& length) const { return figure(length, context.figures()); }
};

Layout layout_of(const Context& context, const Joint& joint, std::size_t member) {
    Layout layout{context, joint, joint_face(context.piece, joint, member), {}};
    for (const FeatureOp op : {FeatureOp::leave, FeatureOp::remove}) {
        for (const Feature* feature : features_at(layout.face, joint, op))
            layout.bodies.push_back(
                {&feature->body, body_outline(feature->body, layout.face.view), op == FeatureOp::leave});
    }
    return layout;
}

// The same seen along a body that is swept across the view, a dovetail's: what stands out or is cut out, its
// end upwards. Empty if there is none.
std::optional<Layout> seen_along_slide(const Layout& layout) {
    const auto slides = [](const Cut& each) { return !(each.outline.near == each.outline.far); };
    const auto found = std::find_if(layout.bodies.begin(), layout.bodies.end(), slides);
    if (found == layout.bodies.end()) return std::nullopt;
    const JointFace& face = layout.face;
    const bool upright = found->body->frame.w.axis == face.view.right.axis;
    const Direction right = upright ? face.view.up : face.view.right;
    const AxisView view = axis_view(cross(right, face.view.towards), face.view.towards);
    const Extents contact{{upright ? face.contact.low.v : face.contact.low.u, face.level},
                          {upright ? face.contact.high.v : face.contact.high.u, face.level}};
    return Layout{layout.context,
                  layout.joint,
                  {face.id, face.kind, view, contact, face.level},
                  {{found->body, body_outline(*found->body, view), found->left}}};
}

// The part near the joint: its own edges, as far as they are not more than a finger's breadth away.
Extents window_of(const Layout& layout) {
    constexpr int beside = 20;  // mm
    Extents window = layout.face.contact;
    for (const Cut& body : layout.bodies) window = around(window, body.outline.all());
    const Extents part = on_paper(layout.face.view, visible_box(layout.face.kind));
    const auto low = [&](const Rational& edge, const Rational& end) {
        return std::max(edge, Rational(end - beside));
    };
    const auto high = [&](const Rational& edge, const Rational& end) {
        return std::min(edge, Rational(end + beside));
    };
    return {{low(part.low.u, window.low.u), low(part.low.v, window.low.v)},
            {high(part.high.u, window.high.u), high(part.high.v, window.high.v)}};
}

// The outline of the part within the window: sides that are the part's own are wide lines.
void add_outline(Sheet& lines, const Layout& layout, const Extents& window) {
    const Extents part = on_paper(layout.face.view, visible_box(layout.face.kind));
    const Rect box = window.rect();
    const auto role = [](bool own) { return own ? LineRole::visible : LineRole::smooth; };
    lines.line(role(window.low.v == part.low.v), {box.left, box.bottom}, {box.right, box.bottom});
    lines.line(role(window.high.v == part.high.v), {box.left, box.top}, {box.right, box.top});
    lines.line(role(window.low.u == part.low.u), {box.left, box.bottom}, {box.left, box.top});
    lines.line(role(window.high.u == part.high.u), {box.right, box.bottom}, {box.right, box.top});
}

void add_bodies(Sheet& lines, const Layout& layout) {
    for (const Cut& each : layout.bodies) {
        const BodyOutline& body = each.outline;
        if (!(body.far == body.near)) lines.items.emplace_back(rectangle_of(body.far, LineRole::hidden));
        lines.items.push_back(body.shape);
        if (std::holds_alternative<Arc>(body.shape)) {
            const Rect box = body.near.rect().grown(3);
            lines.line(LineRole::centre, {box.left, box.centre().y}, {box.right, box.centre().y});
            lines.line(LineRole::centre, {box.centre().x, box.bottom}, {box.centre().x, box.top});
        }
    }
}

bool is_round(const BodyOutline& body) {
    return std::holds_alternative<Arc>(body.shape);
}

// Where something begins and ends along one direction, a round one's middle; with the contact's own ends.
std::vector<Rational> marks_of(const Layout& layout, Rational Point2::*along) {
    std::set<Rational> marks = {layout.face.contact.high.*along};
    for (const Cut& each : layout.bodies) {
        const BodyOutline& body = each.outline;
        const Rational& low = body.near.low.*along;
        const Rational& high = body.near.high.*along;
        for (const Point2& corner : body.corners) marks.insert(corner.*along);
        if (is_round(body)) {
            marks.insert((low + high) / 2);
        } else {
            marks.insert(low);
            marks.insert(high);
        }
    }
    marks.erase(layout.face.contact.low.*along);
    return {marks.begin(), marks.end()};
}

std::vector<Abridged::Stretch> wanted_along(const Layout& layout) {
    std::vector<Abridged::Stretch> wanted = {{layout.face.contact.low.u, layout.face.contact.low.u, 0}};
    for (const Rational& mark : marks_of(layout, &Point2::u)) wanted.push_back({mark, mark, 0});
    return wanted;
}

// From the lower left corner of where the members meet, the same one on both drawings.
void draw_figures(Sheet& sheet, const Layout& layout, const Abridged& along, const Extents& window) {
    const Extents& contact = layout.face.contact;
    const Rect box = window.rect();
    std::vector<Station> across;
    for (const Rational& mark : marks_of(layout, &Point2::u))
        across.push_back({along.at(mark.get_d()), layout.text(Rational(abs(mark - contact.low.u)))});
    draw_running(sheet,
                 {Run::across, box.bottom, box.bottom - 6, along.at(contact.low.u.get_d()), across,
                  along.at(contact.low.u.get_d()) - 12, along.end() + 12},
                 layout.context.fonts);
    std::vector<Station> upright;
    for (const Rational& mark : marks_of(layout, &Point2::v))
        upright.push_back({mark.get_d(), layout.text(Rational(abs(mark - contact.low.v)))});
    const double room = 4.0 * static_cast<double>(upright.size());
    draw_running(sheet,
                 {Run::upright, along.end(), along.end() + 6, contact.low.v.get_d(), upright,
                  contact.low.v.get_d() - room, contact.high.v.get_d() + room},
                 layout.context.fonts);
}

// "2 3/16\" x 1/4\", 7/8\" long"
std::string size_text(const Layout& layout, const Cut& each) {
    const BodyOutline& body = each.outline;
    const Rational along =
        each.left ? Rational(body.front - layout.face.level) : Rational(layout.face.level - body.back);
    const std::string way = ", " + layout.text(along) + (each.left ? " long" : " deep");
    if (is_round(body)) return layout.text(body.near.width()) + " across" + way;
    return layout.text(body.near.width()) + " x " + layout.text(body.near.height()) + way;
}

std::vector<std::string> sizes_of(const Layout& layout) {
    std::vector<std::string> sizes;
    for (const Cut& body : layout.bodies) {
        std::string size = size_text(layout, body);
        if (std::find(sizes.begin(), sizes.end(), size) == sizes.end()) sizes.push_back(std::move(size));
    }
    return sizes;
}

// What the drawing is called, and how it is looked at.
struct Words {
    std::string name;
    std::string sizes;
    std::string seen;
};

Words face_words(const Layout& layout, std::size_t member) {
    const std::string role = capitalised(plain_words(layout.joint.members[member].role));
    const std::string sizes = ". " + role + ": " + joined(sizes_of(layout), "; ") + ".";
    if (member == 0) return {", end", sizes, "Seen from its end; figures from one corner of it."};
    return {", where it is met", sizes,
            "Seen square to its face; figures from the corner where the other part (grey) stands."};
}

Words slide_words(const Layout& layout, std::size_t member) {
    const std::string role = plain_words(layout.joint.members[member].role);
    return {", " + role, ".", "Seen along the slide; figures from the corner where the parts meet."};
}

Template drawn_layout(const Layout& layout, const Words& words, const std::string& joint_name,
                      const std::string& file) {
    const Extents window = window_of(layout);
    const Abridged along(window.low.u, window.high.u, wanted_along(layout), layout.context.piece.style.unit);
    Sheet lines;
    add_outline(lines, layout, window);
    lines.items.emplace_back(rectangle_of(layout.face.contact, LineRole::smooth));
    add_bodies(lines, layout);
    Sheet sheet;
    const Rect box = window.rect();
    along.draw(sheet, lines.items, box.bottom, box.top, layout.context.figures());
    draw_figures(sheet, layout, along, window);
    std::vector<std::string> notes = {capitalised(joint_name) + words.sizes, words.seen};
    for (std::string& note : along.note()) notes.push_back(std::move(note));
    return captioned(layout.context, layout.face.kind.letter, plain_words(layout.face.kind.name) + words.name,
                     notes, std::move(sheet), file);
}

}  // namespace

std::vector<Template> joint_layouts(const Context& context) {
    std::vector<Template> found;
    std::size_t number = 0;
    for (const DistinctJoint& distinct : distinct_joints(context.piece)) {
        ++number;
        const JointKind& kind = context.piece[distinct.kind];
        if (kind.fastening || distinct.joints.empty()) continue;
        const Joint& joint = context.piece[distinct.joints.front()];
        for (std::size_t member = 0; member < joint.members.size(); ++member) {
            const Layout layout = layout_of(context, joint, member);
            if (!layout.needs_setting_out()) continue;
            const std::string name = plain_words(kind.work.definition);
            std::vector<std::string> words = {"joint", std::to_string(number), kind.work.definition,
                                              joint.members[member].role};
            found.push_back(drawn_layout(layout, face_words(layout, member), name, file_name(words)));
            const std::optional<Layout> side = seen_along_slide(layout);
            words.emplace_back("profile");
            if (side)
                found.push_back(drawn_layout(*side, slide_words(*side, member), name, file_name(words)));
        }
    }
    return found;
}

}  // namespace rodwright::packet
