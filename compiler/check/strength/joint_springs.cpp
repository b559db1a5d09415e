#include "compiler/check/strength/joint_springs.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace rodwright::strength {

namespace {

constexpr double stretch = 150;  // mm of a long meeting for one spring
constexpr double most_springs = 12;
constexpr double plate_springs = 3;  // across the end of a plate
constexpr double long_meeting = 60;  // mm: a shorter one is one spring

// How many springs the joint has along the longer side of its meeting.
std::size_t count_of(const Piece& piece, const Joint& joint, const PlacedJoint& placed) {
    const double length = std::max(placed.u, placed.v);
    if (length < long_meeting) return 1;
    bool end = false;
    bool plate_end = false;
    for (const JointMember& member : joint.members) {
        const PlacedPart part = placed_part(piece, member.part);
        if (std::abs(placed.axes.col(2).dot(part.grain())) < 0.5) continue;
        end = true;
        plate_end = plate_end || may_be_plate(part.size);
    }
    if (end) return plate_end ? static_cast<std::size_t>(plate_springs) : 1;
    return static_cast<std::size_t>(std::clamp(std::ceil(length / stretch) + 1, 2.0, most_springs));
}

// What of the bond lies between `low` and `high` along an axis; empty if nothing does.
std::optional<Bond> clipped(const Bond& bond, Eigen::Index axis, double low, double high) {
    const double from = std::max(low, bond.centre(axis) - bond.half(axis));
    const double to = std::min(high, bond.centre(axis) + bond.half(axis));
    if (bond.half(axis) == 0) {
        return bond.centre(axis) >= low && bond.centre(axis) < high ? std::optional(bond) : std::nullopt;
    }
    if (to <= from) return std::nullopt;
    Bond part = bond;
    const double share = (to - from) / (2 * bond.half(axis));
    part.centre(axis) = (from + to) / 2;
    part.half(axis) = (to - from) / 2;
    part.stiffness *= share;
    part.strength *= share;
    return part;
}

// What is left of the stiffness of a contact that has come open: enough that no part is adrift.
constexpr double open_share = 1e-4;

void add_contacts(JointSpring& spring, const Bond& bond) {
    for (const Vec3& point : points_of(bond))
        spring.contacts.push_back({spring.placed.to_piece(point), bond.stiffness(2) / 4, true});
}

// Forces at a point, moments about the origin of the spring, from its motion there.
Eigen::Matrix<double, 3, 6> reach_of(const Vec3& arm) {
    Eigen::Matrix<double, 3, 6> reach;
    reach.leftCols<3>().setIdentity();
    reach.rightCols<3>() << 0, arm.z(), -arm.y(), -arm.z(), 0, arm.x(), arm.y(), -arm.x(), 0;
    return reach;
}

frame::Mat6 held_by(const JointSpring& spring) {
    frame::Mat6 total = frame::Mat6::Zero();
    for (const Bond& bond : spring.bonds.bonds) {
        Vec3 stiffness = bond.stiffness / 4;
        if (bond.one_way) stiffness.z() = 0;
        const Mat3 turned = spring.placed.axes * stiffness.asDiagonal() * spring.placed.axes.transpose();
        for (const Vec3& point : points_of(bond)) {
            const auto reach = reach_of(spring.placed.axes * point);
            total += reach.transpose() * turned * reach;
        }
    }
    return total;
}

}  // namespace

std::array<Vec3, 4> points_of(const Bond& bond) {
    std::array<Vec3, 4> points;
    const Vec3 reach = bond.half / std::numbers::sqrt3;
    // The two axes along the rectangle; of a pin it does not matter.
    const Eigen::Index across = bond.half.x() == 0 ? 0 : bond.half.y() == 0 ? 1 : 2;
    const Eigen::Index a = (across + 1) % 3;
    const Eigen::Index b = (across + 2) % 3;
    for (std::size_t i = 0; i < 4; ++i) {
        points[i] = bond.centre;
        points[i](a) += i % 2 == 0 ? reach(a) : -reach(a);
        points[i](b) += i < 2 ? reach(b) : -reach(b);
    }
    return points;
}

std::vector<JointSpring> joint_springs(const Piece& piece, std::size_t index, const Bonds& bonds) {
    const Joint& joint = piece.joints[index];
    const PlacedJoint placed = placed_joint(joint);
    const Eigen::Index along = placed.u > placed.v ? 0 : 1;
    const double length = std::max(placed.u, placed.v);
    const std::size_t count = count_of(piece, joint, placed);
    constexpr double everywhere = std::numeric_limits<double>::infinity();
    std::vector<JointSpring> springs;
    for (std::size_t i = 0; i < count; ++i) {
        const double step = length / static_cast<double>(count);
        const double from = -length / 2 + step * static_cast<double>(i);
        const double low = i == 0 ? -everywhere : from;
        const double high = i + 1 == count ? everywhere : from + step;
        Vec3 middle = Vec3::Zero();
        middle(along) = from + step / 2;
        JointSpring spring;
        spring.joint = index;
        spring.placed = placed;
        spring.placed.origin = placed.to_piece(middle);
        for (const Bond& bond : bonds.bonds) {
            std::optional<Bond> part = clipped(bond, along, low, high);
            if (!part) continue;
            part->centre -= middle;
            spring.bonds.bonds.push_back(*part);
            if (part->one_way) add_contacts(spring, *part);
        }
        if (count == 1) spring.bonds.tongues = bonds.tongues;
        spring.held = held_by(spring);
        if (!spring.bonds.bonds.empty()) springs.push_back(std::move(spring));
    }
    return springs;
}

frame::Mat6 stiffness_of(const JointSpring& joint) {
    frame::Mat6 total = joint.held;
    const Vec3 normal = joint.placed.axes.col(2);
    for (const Contact& contact : joint.contacts) {
        const Eigen::Matrix<double, 1, 6> reach =
            normal.transpose() * reach_of(contact.at - joint.placed.origin);
        total += (contact.pressed ? 1 : open_share) * contact.stiffness * reach.transpose() * reach;
    }
    return total;
}

}  // namespace rodwright::strength
