#include "compiler/check/strength/placed.hpp"

#include <algorithm>
#include <cmath>

namespace rodwright::strength {

namespace {

constexpr double touching = 0.01;  // mm

Eigen::Index index_of(Axis axis) {
    return static_cast<Eigen::Index>(axis);
}

// The box around a body, in the axes that its frame is written in.
Box3 box_around(const Body& body) {
    Box3 own;
    if (body.form == BodyForm::prism) {
        for (const Point2& point : body.profile) own.extend(Vec3(point.u.get_d(), point.v.get_d(), 0));
    } else {
        const Vec3 half(body.size_u.get_d() / 2, body.size_v.get_d() / 2, 0);
        own.extend(half);
        own.extend(-half);
    }
    own.extend(Vec3(own.min().x(), own.min().y(), body.length.get_d()));
    Mat3 axes;
    axes << unit(body.frame.u), unit(body.frame.v), unit(body.frame.w);
    const Vec3 origin = vec3_of(body.frame.origin);
    Box3 box;
    box.extend(axes * own.min() + origin);
    box.extend(axes * own.max() + origin);
    return box;
}

}  // namespace

Vec3 vec3_of(const Vector& vector) {
    return {vector[Axis::wide].get_d(), vector[Axis::deep].get_d(), vector[Axis::tall].get_d()};
}

Vec3 unit(Direction direction) {
    Vec3 result = Vec3::Zero();
    result(index_of(direction.axis)) = direction.positive ? 1 : -1;
    return result;
}

Box3 box3_of(const Box& box) {
    return {vec3_of(box.low), vec3_of(box.high)};
}

PlacedPart placed_part(const Piece& piece, PartId id) {
    const Part& part = piece[id];
    PlacedPart placed;
    placed.axes.setZero();
    for (const Axis axis : all_axes) {
        const Direction from = part.placement.turn.from[static_cast<std::size_t>(axis)];
        placed.axes(index_of(axis), index_of(from.axis)) = from.positive ? 1 : -1;
    }
    placed.move = vec3_of(part.placement.move);
    placed.size = vec3_of(piece[part.kind].size);
    return placed;
}

Box3 PlacedJoint::to_own(const Box3& box) const {
    Box3 result;
    result.extend(to_own(box.min()));
    result.extend(to_own(box.max()));
    return result;
}

PlacedJoint placed_joint(const Joint& joint) {
    PlacedJoint placed;
    placed.axes << unit(joint.frame.u), unit(joint.frame.v), unit(joint.frame.w);
    placed.origin = vec3_of(joint.frame.origin);
    placed.u = joint.contact_u.get_d();
    placed.v = joint.contact_v.get_d();
    return placed;
}

// A kind has the bodies of all its joints; those of this one begin where its members meet.
std::vector<Box3> bodies_at(const Piece& piece, const Joint& joint, std::size_t member, FeatureOp op) {
    const PlacedJoint placed = placed_joint(joint);
    const PlacedPart part = placed_part(piece, joint.members[member].part);
    const std::string& definition = piece[joint.kind].work.definition;
    const Box3 meeting(Vec3(-placed.u / 2 - touching, -placed.v / 2 - touching, -touching),
                       Vec3(placed.u / 2 + touching, placed.v / 2 + touching, touching));
    std::vector<Box3> found;
    for (const Feature& feature : piece[piece[joint.members[member].part].kind].features) {
        if (feature.op != op || feature.joint == JointKindId::none || feature.made_by != definition) continue;
        const Box3 own = box_around(feature.body);
        Box3 in_piece;
        in_piece.extend(part.to_piece(own.min()));
        in_piece.extend(part.to_piece(own.max()));
        const Box3 box = placed.to_own(in_piece);
        Vec3 middle = box.center();
        if (box.min().z() <= touching && box.max().z() >= -touching) middle.z() = 0;
        if (meeting.contains(middle)) found.push_back(box);
    }
    return found;
}

double Elastic::towards(const Vec3& direction, const Vec3& grain) const {
    return std::abs(direction.dot(grain)) > 0.5 ? along : across;
}

std::optional<Elastic> elastic_of(const Piece& piece, PartId id) {
    const Wood* wood = piece.find_wood(piece[piece[id].kind].wood);
    if (wood == nullptr || !wood->mechanics) return std::nullopt;
    const WoodMechanics& known = *wood->mechanics;
    const double along = 1.1 * known.modulus;
    return Elastic{along, known.across * along, known.shear_modulus * along, known};
}

}  // namespace rodwright::strength
