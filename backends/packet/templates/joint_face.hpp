// One member of a joint seen square to where the members meet.
#pragma once

#include <vector>

#include "backends/packet/templates/body_outline.hpp"

namespace rodwright::packet {

struct JointFace {
    KindId id{};
    const Kind& kind;
    drawing::AxisView view;  // the viewer where the other member is; the first member's width to the right
    Extents contact;         // the rectangle where the members meet
    Rational level;          // its depth in the view

    // Whether a body reaches the contact where the members meet.
    bool has(const BodyOutline& body) const;
};
JointFace joint_face(const Piece& piece, const Joint& joint, std::size_t member);

// The features that the joint gives to this member at this place.
std::vector<const Feature*> features_at(const JointFace& face, const Joint& joint, FeatureOp op);

}  // namespace rodwright::packet
