// What a definition sees of its members. Private to compiler/graph/.
#pragma once

#include "compiler/graph/draft.hpp"

namespace rodwright {

// The frame of a joint: origin in the middle of the contact, w out of the first member. u and v run to the
// greater coordinate, the other way along axes on which the joint is the image of one that is written.
Frame joint_frame(const DraftPart& first, Face face, const Box& contact, const std::array<bool, 3>& mirrored);
// The frame of a face or end of a part: origin in its middle, w into the wood.
Frame face_frame(const DraftPart& part, Face face);
// The frame of an edge: origin in its middle, v along it, u along face a, w along face b, both into the wood.
Frame edge_frame(const DraftPart& part, BoxEdge edge);

MemberView joint_member_view(const DraftPart& part, std::string role, std::string name, MemberForm form,
                             const Frame& frame, const Box& contact);
MemberView shape_target_view(const DraftPart& part, std::string role, std::string name, MemberForm form,
                             const Frame& frame);

// What a face is to the part it is on.
MemberForm form_of(const DraftPart& part, Face face);

}  // namespace rodwright
