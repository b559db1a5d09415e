#include "backends/packet/joints/joint_views.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "backends/drawing/depth_buffer.hpp"
#include "backends/packet/joints/parting.hpp"
#include "backends/packet/parts/part_geometry.hpp"

namespace rodwright::packet {

using namespace drawing;

namespace {

double larger_contact(const Joint& joint) {
    return std::max(joint.contact_u.get_d(), joint.contact_v.get_d());
}

// How much of the members is shown along the way from one into the other, mm either side.
double reach_of(const Piece& piece, const Joint& joint) {
    return std::max(0.6 * larger_contact(joint) + 25, depth_of(piece, joint) + 15);
}

void grow(Bounds& window, Direction direction, double by) {
    const auto axis = static_cast<std::size_t>(direction.axis);
    window.low[axis] -= by;
    window.high[axis] += by;
}

// What the pictorials show.
Bounds surroundings_of(const Piece& piece, const Joint& joint) {
    Bounds window{point3_of(joint.frame.origin), point3_of(joint.frame.origin)};
    const double beside = 0.25 * larger_contact(joint) + 20;
    grow(window, joint.frame.u, joint.contact_u.get_d() / 2 + beside);
    grow(window, joint.frame.v, joint.contact_v.get_d() / 2 + beside);
    grow(window, joint.frame.w, reach_of(piece, joint));
    return window;
}

// What the sections show: the joint and a little around it; of a long one the stretch around `middle`.
Bounds close_window(const Piece& piece, const Joint& joint, const Point3& middle) {
    constexpr double beside = 12;  // mm
    constexpr double most = 55;    // mm either side of the middle: at 1:2 it still has room beside another
    Bounds window{point3_of(joint.frame.origin), point3_of(joint.frame.origin)};
    grow(window, joint.frame.u, joint.contact_u.get_d() / 2 + beside);
    grow(window, joint.frame.v, joint.contact_v.get_d() / 2 + beside);
    grow(window, joint.frame.w, depth_of(piece, joint) + 1.5 * beside);
    for (std::size_t i = 0; i < 3; ++i) {
        window.low[i] = std::max(window.low[i], middle[i] - most);
        window.high[i] = std::min(window.high[i], middle[i] + most);
    }
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

// A coordinate of a part's kind in the piece's axes.
Rational placed(const Placement& placement, Axis axis, const Rational& own) {
    const Direction from = placement.turn.from[static_cast<std::size_t>(axis)];
    return placement.move[axis] + (from.positive ? own : Rational(-own));
}

std::vector<Rational> marks_in_piece(const Piece& piece, const Part& part, const Feature& feature,
                                     Axis axis) {
    const Axis own = part.placement.turn.from[static_cast<std::size_t>(axis)].axis;
    std::vector<Rational> marks;
    for (const Rational& mark : marks_of(feature.body, overall_box(piece[part.kind]), own))
        marks.push_back(placed(part.placement, axis, mark));
    std::sort(marks.begin(), marks.end());
    return marks;
}

bool spans(const std::vector<Rational>& marks, double low, double high) {
    return !marks.empty() && marks.front().get_d() <= high && marks.back().get_d() >= low;
}

// Of all that is cut for joints of that kind into a part: what is cut where the members meet.
bool is_of(const Piece& piece, const Joint& joint, const Bounds& window, const Part& part,
           const Feature& feature) {
    if (feature.joint != joint.kind) return false;
    const Frame& frame = joint.frame;
    constexpr double touch = 1e-6;  // mm
    const auto meets = [&](Direction along, double size) {
        const double half = std::max(size / 2 - touch, touch);
        const double at = frame.origin[along.axis].get_d();
        return spans(marks_in_piece(piece, part, feature, along.axis), at - half, at + half);
    };
    const auto way = static_cast<std::size_t>(frame.w.axis);
    return meets(frame.u, joint.contact_u.get_d()) && meets(frame.v, joint.contact_v.get_d()) &&
           spans(marks_in_piece(piece, part, feature, frame.w.axis), window.low[way], window.high[way]);
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
      middle_(section_point(context.piece, joint)),
      window_(close_window(context.piece, joint, middle_)),
      surroundings_(surroundings_of(context.piece, joint)) {
    std::vector<PlacedSolid> members;
    for (const JointMember& member : joint.members) {
        const auto index = static_cast<std::uint32_t>(member.part);
        for (const PlacedSolid& placed : context.placed) {
            if (placed.tag == index) members.push_back(placed);
        }
    }
    members_ = cut_to(context.kernel, members, surroundings_);
}

// Where the members are cut off, `moved` by as much, in a view's plane.
static void add_broken(std::vector<Segment>& broken, const std::vector<Segment3>& edges, const Point3& moved,
                       const ViewAxes& axes) {
    const auto on_paper = [&](const Point3& point) {
        const Point3 seen = axes.seen({point[0] + moved[0], point[1] + moved[1], point[2] + moved[2]});
        return Point{seen[0], seen[1]};
    };
    for (const Segment3& edge : edges) broken.push_back({on_paper(edge[0]), on_paper(edge[1])});
}

Pictorial JointViews::pictorial(bool apart, const Rect& room) const {
    std::vector<PlacedSolid> solids = members_.solids;
    const Direction way = way_in(joint_);
    const Piece& piece = context_.piece;
    const double out = depth_of(piece, joint_) + 0.4 * reach_of(piece, joint_);
    const ViewAxes axes = axes_of(view_of(joint_));
    std::vector<ShadedPart> parts;
    std::vector<Segment> broken;
    for (std::size_t i = 0; i < solids.size(); ++i) {
        const PartId part{solids[i].tag};
        Point3 moved{};
        if (apart && part == joint_.members[0].part)
            moved[static_cast<std::size_t>(way.axis)] = way.positive ? -out : out;
        add_broken(broken, broken_edges(members_.triangles[i], solids[i].pose, surroundings_), moved, axes);
        for (std::size_t axis = 0; axis < 3; ++axis) solids[i].pose.move[axis] += moved[axis];
        parts.push_back({&members_.triangles[i], solids[i].pose, solids[i].tag,
                         kind_colour(piece, piece[piece[part].kind])});
    }
    Pictorial pictorial = lay_out_pictorial(context_.kernel, solids, std::move(parts), view_of(joint_), room);
    pictorial.broken = std::move(broken);
    return pictorial;
}

void JointViews::crop(Bounds& window, Direction section_along, Axis axis, double most) const {
    constexpr double beside = 8;  // mm: of the wood beyond what is measured
    double& low = window.low[static_cast<std::size_t>(axis)];
    double& high = window.high[static_cast<std::size_t>(axis)];
    if (high - low <= most) return;
    const std::vector<Rational> found = marks(section_along, axis);
    double best = low;
    std::ptrdiff_t shown = -1;
    for (const Rational& mark : found) {
        for (const double start : {mark.get_d() - beside, mark.get_d() + beside - most}) {
            const double from = std::clamp(start, low, high - most);
            const auto within = std::count_if(found.begin(), found.end(), [&](const Rational& each) {
                return each.get_d() >= from && each.get_d() <= from + most;
            });
            if (within <= shown) continue;
            shown = within;
            best = from;
        }
    }
    low = best;
    high = best + most;
}

Section JointViews::section(Direction along, double most_across, double most_up) const {
    const AxisView from = looking_along(along);
    Bounds window = window_;
    crop(window, along, from.right.axis, most_across);
    crop(window, along, from.up.axis, most_up);
    return section_through(context_.kernel, members_.solids, from, middle_, window);
}

std::vector<Rational> JointViews::marks(Direction section_along, Axis axis) const {
    const Piece& piece = context_.piece;
    const double through = middle_[static_cast<std::size_t>(section_along.axis)];
    const auto index = static_cast<std::size_t>(axis);
    std::set<Rational> marks;
    for (const JointMember& member : joint_.members) {
        const Part& part = piece[member.part];
        for (const Rational& face : {part.body.low[axis], part.body.high[axis]}) {
            if (face.get_d() > window_.low[index] && face.get_d() < window_.high[index]) marks.insert(face);
        }
        for (const Feature& feature : piece[part.kind].features) {
            if (!is_of(piece, joint_, window_, part, feature)) continue;
            if (!spans(marks_in_piece(piece, part, feature, section_along.axis), through, through)) continue;
            const std::vector<Rational> found = marks_in_piece(piece, part, feature, axis);
            marks.insert(found.begin(), found.end());
        }
    }
    return {marks.begin(), marks.end()};
}

}  // namespace rodwright::packet
