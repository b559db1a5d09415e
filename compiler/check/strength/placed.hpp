// Parts and joints where they are, in doubles. Millimetres and megapascals, in the piece's axes unless said.
#pragma once

#include <Eigen/Geometry>

#include "compiler/check/frame/model.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::strength {

using frame::Mat3;
using frame::Vec3;
using Box3 = Eigen::AlignedBox3d;

Vec3 vec3_of(const Vector& vector);
Vec3 unit(Direction direction);
Box3 box3_of(const Box& box);

// A part's own axes: x along the grain, y its width, z its thickness; its visible body from 0 to `size`.
struct PlacedPart {
    Mat3 axes = Mat3::Identity();  // columns
    Vec3 move = Vec3::Zero();
    Vec3 size = Vec3::Zero();

    Vec3 to_piece(const Vec3& own) const { return axes * own + move; }
    Vec3 to_own(const Vec3& point) const { return axes.transpose() * (point - move); }
    Vec3 grain() const { return axes.col(0); }
};
PlacedPart placed_part(const Piece& piece, PartId id);

// The frame of a joint: u, v and w as columns. May be left-handed.
struct PlacedJoint {
    Mat3 axes = Mat3::Identity();
    Vec3 origin = Vec3::Zero();
    double u = 0;  // size of the rectangle where the members meet
    double v = 0;

    Vec3 to_piece(const Vec3& own) const { return axes * own + origin; }
    Vec3 to_own(const Vec3& point) const { return axes.transpose() * (point - origin); }
    Box3 to_own(const Box3& box) const;
};
PlacedJoint placed_joint(const Joint& joint);

// Bodies that the joint leaves on, or removes from, one of its members there, as boxes in its own axes.
std::vector<Box3> bodies_at(const Piece& piece, const Joint& joint, std::size_t member, FeatureOp op);

// Elastic constants of a part's wood; empty if they are not known.
struct Elastic {
    double along = 0;   // E_L: the tested modulus and a tenth, as shear deflection is in that (handbook)
    double across = 0;  // E across the grain, mean of R and T
    double shear = 0;   // G
    WoodMechanics wood;

    // E along a direction, for a part whose fibres run along `grain`.
    double towards(const Vec3& direction, const Vec3& grain) const;
};
std::optional<Elastic> elastic_of(const Piece& piece, PartId id);

}  // namespace rodwright::strength
