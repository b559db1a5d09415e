#include "backends/packet/joint_views.hpp"

#include <algorithm>
#include <cmath>

#include "backends/drawing/depth_buffer.hpp"
#include "backends/packet/parting.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

double larger_contact(const Joint& joint) {
    return std::max(joint.contact_u.get_d(), joint.contact_v.get_d());
}

constexpr double section_reach = 35;  // mm: what a section shows beyond the joint

// How much of the members is shown along the way from one into the other, mm either side.
double reach_of(const Piece& piece, const Joint& joint) {
    return std::max(0.6 * larger_contact(joint) + 25, depth_of(piece, joint) + 15);
}

// `reach`: along the way from one member into the other, either side.
Bounds window_of(const Joint& joint, double reach) {
    Bounds window{point3_of(joint.frame.origin), point3_of(joint.frame.origin)};
    const auto grow = [&](Direction direction, double by) {
        const auto axis = static_cast<std::size_t>(direction.axis);
        window.low[axis] -= by;
        window.high[axis] += by;
    };
    const double beside = 0.25 * larger_contact(joint) + 20;
    grow(joint.frame.u, joint.contact_u.get_d() / 2 + beside);
    grow(joint.frame.v, joint.contact_v.get_d() / 2 + beside);
    grow(joint.frame.w, reach);
    return window;
}

// The middle of a body, in its own frame.
Point3 middle_of(const Body& body) {
    Vector middle = body.frame.origin;
    const auto go = [&](Direction direction, const Rational& by) {
        middle[direction.axis] += direction.positive ? by : Rational(-by);
    };
    go(body.frame.w, body.length / 2);
    for (const Point2& corner : body.profile) {
        const auto corners = static_cast<long>(body.profile.size());
        go(body.frame.u, corner.u / corners);
        go(body.frame.v, corner.v / corners);
    }
    return point3_of(middle);
}

double distance(const Point3& a, const Point3& b) {
    return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

// Where a section says most: through the middle of what is cut for the joint, of several the one nearest to
// where the members meet.
Point3 section_point(const Piece& piece, const Joint& joint) {
    const Point3 contact = point3_of(joint.frame.origin);
    Point3 nearest = contact;
    double least = -1;
    for (const JointMember& member : joint.members) {
        const Part& part = piece[member.part];
        const Pose pose = pose_of(part.placement);
        for (const Feature& feature : piece[part.kind].features) {
            if (feature.joint != joint.kind || feature.op != FeatureOp::remove) continue;
            const Point3 middle = posed(pose, middle_of(feature.body));
            const double away = distance(middle, contact);
            if (least >= 0 && away >= least) continue;
            least = away;
            nearest = middle;
        }
    }
    return nearest;
}

// From above, and from the side that the first member comes from.
View view_of(const Joint& joint) {
    const Direction way = way_in(joint);
    View view{{1, -1, 1}, {0, 0, 1}};
    const auto axis = static_cast<std::size_t>(way.axis);
    if (way.axis != Axis::tall) view.towards[axis] = way.positive ? -1 : 1;
    return view;
}

AxisView looking_along(Direction along) {
    switch (along.axis) {
        case Axis::wide:
            return axis_view({Axis::wide, true}, {Axis::tall, true});
        case Axis::deep:
            return axis_view({Axis::deep, false}, {Axis::tall, true});
        case Axis::tall:
            break;
    }
    return axis_view({Axis::tall, true}, {Axis::deep, true});
}

}  // namespace

JointViews::JointViews(const Context& context, const Joint& joint)
    : context_(context),
      joint_(joint),
      window_(window_of(joint, depth_of(context.piece, joint) + section_reach)),
      middle_(section_point(context.piece, joint)) {
    std::vector<PlacedSolid> members;
    for (const JointMember& member : joint.members) {
        const auto index = static_cast<std::uint32_t>(member.part);
        for (const PlacedSolid& placed : context.placed) {
            if (placed.tag == index) members.push_back(placed);
        }
    }
    members_ = cut_to(context.kernel, members, window_of(joint, reach_of(context.piece, joint)));
}

Pictorial JointViews::pictorial(bool apart, const Rect& room) const {
    std::vector<PlacedSolid> solids = members_.solids;
    const Direction way = way_in(joint_);
    const Piece& piece = context_.piece;
    const double out = depth_of(piece, joint_) + 0.4 * reach_of(piece, joint_);
    std::vector<ShadedPart> parts;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        const PartId part{solids[i].tag};
        if (apart && part == joint_.members[0].part)
            solids[i].pose.move[static_cast<std::size_t>(way.axis)] += way.positive ? -out : out;
        parts.push_back({&members_.triangles[i], solids[i].pose, solids[i].tag,
                         kind_colour(piece, piece[piece[part].kind])});
    }
    return lay_out_pictorial(context_.kernel, solids, std::move(parts), view_of(joint_), room);
}

Section JointViews::section(Direction along) const {
    return section_through(context_.kernel, members_.solids, looking_along(along), middle_, window_);
}

}  // namespace rodwright::packet
