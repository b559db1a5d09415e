#include "compiler/graph/member_view.hpp"

namespace rodwright {

namespace {

Vector middle(const Box& box) {
    Vector result;
    for (const Axis axis : all_axes) result[axis] = (box.low[axis] + box.high[axis]) / 2;
    return result;
}

Axis remaining(Axis a, Axis b) {
    return static_cast<Axis>(3 - static_cast<int>(a) - static_cast<int>(b));
}

// u and v for a face with that normal: an end has the thickness and width, any other face the grain as v.
void set_face_axes(Frame& frame, const DraftPart& part, Axis normal) {
    const bool end = normal == part.axes.length;
    frame.v = {end ? part.axes.width : part.axes.length, true};
    frame.u = {remaining(normal, frame.v.axis), true};
}

using Sizes = std::vector<std::pair<std::string_view, Rational>>;

// How far the part goes on past the contact, against the direction and along it.
void add_rest(Sizes& sizes, const DraftPart& part, const Box& contact, Direction direction,
              std::string_view behind, std::string_view ahead) {
    Rational low = contact.low[direction.axis] - part.body.low[direction.axis];
    Rational high = part.body.high[direction.axis] - contact.high[direction.axis];
    if (!direction.positive) std::swap(low, high);
    sizes.emplace_back(behind, std::move(low));
    sizes.emplace_back(ahead, std::move(high));
}

void add_part_sizes(Sizes& sizes, const DraftPart& part) {
    sizes.emplace_back("length", part.body.size(part.axes.length));
    sizes.emplace_back("part_length", part.body.size(part.axes.length));
    sizes.emplace_back("part_width", part.body.size(part.axes.width));
    sizes.emplace_back("part_thick", part.body.size(part.axes.thick));
}

}  // namespace

MemberForm form_of(const DraftPart& part, Face face) {
    if (axis_of(face) == part.axes.length) return MemberForm::end;
    return axis_of(face) == part.axes.width ? MemberForm::edge : MemberForm::face;
}

Frame joint_frame(const DraftPart& first, Face face, const Box& contact,
                  const std::array<bool, 3>& mirrored) {
    Frame frame;
    frame.origin = middle(contact);
    frame.w = outward(face);
    set_face_axes(frame, first, axis_of(face));
    frame.u.positive = !mirrored[static_cast<std::size_t>(frame.u.axis)];
    frame.v.positive = !mirrored[static_cast<std::size_t>(frame.v.axis)];
    return frame;
}

Frame face_frame(const DraftPart& part, Face face) {
    Frame frame;
    frame.origin = middle(part.body);
    frame.origin[axis_of(face)] = part.body.at(face);
    frame.w = -outward(face);
    set_face_axes(frame, part, axis_of(face));
    return frame;
}

Frame edge_frame(const DraftPart& part, BoxEdge edge) {
    Frame frame;
    frame.origin = middle(part.body);
    frame.origin[axis_of(edge.a)] = part.body.at(edge.a);
    frame.origin[axis_of(edge.b)] = part.body.at(edge.b);
    frame.u = -outward(edge.b);
    frame.w = -outward(edge.a);
    frame.v = {remaining(axis_of(edge.a), axis_of(edge.b)), true};
    return frame;
}

MemberView joint_member_view(const DraftPart& part, std::string role, std::string name, MemberForm form,
                             const Frame& frame, const Box& contact) {
    MemberView view{std::move(role), std::move(name), form, {}};
    Sizes& sizes = view.sizes;
    const Axis u = frame.u.axis;
    const Axis v = frame.v.axis;
    const bool face = form == MemberForm::face;
    sizes.emplace_back("thick", face ? part.body.size(u) : contact.size(u));
    sizes.emplace_back("width", face ? part.body.size(v) : contact.size(v));
    sizes.emplace_back("contact_thick", contact.size(u));
    sizes.emplace_back("contact_width", contact.size(v));
    sizes.emplace_back("depth", part.body.size(frame.w.axis));
    add_rest(sizes, part, contact, frame.v, "before", "beyond");
    add_rest(sizes, part, contact, frame.u, "under", "over");
    add_part_sizes(sizes, part);
    return view;
}

MemberView shape_target_view(const DraftPart& part, std::string role, std::string name, MemberForm form,
                             const Frame& frame) {
    MemberView view{std::move(role), std::move(name), form, {}};
    Sizes& sizes = view.sizes;
    if (form == MemberForm::edge) {
        sizes.emplace_back("length", part.body.size(frame.v.axis));
        sizes.emplace_back("thick", part.body.size(frame.u.axis));
        sizes.emplace_back("width", part.body.size(frame.w.axis));
    } else {
        sizes.emplace_back("width", part.body.size(frame.u.axis));
        sizes.emplace_back("thick", part.body.size(frame.w.axis));
    }
    sizes.emplace_back("depth", part.body.size(frame.w.axis));
    add_part_sizes(sizes, part);
    return view;
}

}  // namespace rodwright
