#include "backends/packet/templates/joint_face.hpp"

namespace rodwright::packet {

namespace {

Vector into_kind(const Placement& placement, const Vector& point) {
    Vector from_move;
    for (const Axis axis : all_axes) from_move[axis] = point[axis] - placement.move[axis];
    return placement.turn.inverse().apply(from_move);
}

}  // namespace

bool JointFace::has(const BodyOutline& body) const {
    const Extents all = body.all();
    return body.back <= level && body.front >= level && all.low.u <= contact.high.u &&
           all.high.u >= contact.low.u && all.low.v <= contact.high.v && all.high.v >= contact.low.v;
}

JointFace joint_face(const Piece& piece, const Joint& joint, std::size_t member) {
    const Part& part = piece[joint.members[member].part];
    const Turn back = part.placement.turn.inverse();
    const Direction inward = back.apply(joint.frame.w);
    const drawing::AxisView view = view_with(member == 0 ? inward : -inward, back.apply(joint.frame.v));
    const Vector middle = into_kind(part.placement, joint.frame.origin);
    const Point2 at = on_paper(view, middle);
    const Rational across = joint.contact_v / 2;
    const Rational up = joint.contact_u / 2;
    return {part.kind,
            piece[part.kind],
            view,
            {{at.u - across, at.v - up}, {at.u + across, at.v + up}},
            depth_in(view, middle)};
}

std::vector<const Feature*> features_at(const JointFace& face, const Joint& joint, FeatureOp op) {
    std::vector<const Feature*> found;
    for (const Feature& feature : face.kind.features) {
        if (feature.op == op && feature.joint == joint.kind &&
            face.has(body_outline(feature.body, face.view)))
            found.push_back(&feature);
    }
    return found;
}

}  // namespace rodwright::packet
