#include "compiler/check/strength/bonds.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace rodwright::strength {

namespace {

constexpr double no_limit = std::numeric_limits<double>::infinity();
constexpr double least_shoulder = 1;  // mm
constexpr double fit = 0.5;           // mm: faces nearer than this touch

struct Member {
    Elastic elastic;
    Vec3 grain = Vec3::Zero();  // in the joint's axes
    Box3 body;                  // in the joint's axes
    std::vector<Box3> left;
    std::vector<Box3> removed;

    double modulus(Eigen::Index axis) const { return elastic.towards(Vec3::Unit(axis), grain); }
    bool end_grain(Eigen::Index axis) const { return std::abs(grain(axis)) > 0.5; }
    double depth() const { return body.sizes().z(); }
};

struct JointView {
    PlacedJoint placed;
    std::array<Member, 2> members;
    bool glued = false;
    const Rules& rules;
};

double in_series(double first, double second) {
    return 1 / (1 / first + 1 / second);
}

// A face across `axis`, of which `depth` of wood gives on both sides.
Bond face_bond(BondKind kind, const Box3& face, Eigen::Index axis) {
    Bond bond{kind, face.center(), face.sizes() / 2, Vec3::Zero(), Vec3::Constant(no_limit)};
    bond.half(axis) = 0;
    return bond;
}

double area_of(const Box3& face, Eigen::Index axis) {
    const Vec3 sizes = face.sizes();
    return sizes((axis + 1) % 3) * sizes((axis + 2) % 3);
}

Bond bearing(const JointView& view, const Box3& face, Eigen::Index axis, const Vec3& depths) {
    Bond bond = face_bond(BondKind::bearing, face, axis);
    const double stiffness = area_of(face, axis) * in_series(view.members[0].modulus(axis) / depths(0),
                                                             view.members[1].modulus(axis) / depths(1));
    bond.stiffness.setConstant(view.rules.friction * stiffness);
    bond.stiffness(axis) = stiffness;
    return bond;
}

Bond glue(const JointView& view, const Box3& face, Eigen::Index axis, double depth) {
    const Member& a = view.members[0];
    const Member& b = view.members[1];
    const bool end_grain = a.end_grain(axis) || b.end_grain(axis);
    Bond bond = face_bond(end_grain ? BondKind::end_grain_glue : BondKind::glue, face, axis);
    const double area = area_of(face, axis);
    const double stiff_area = (end_grain ? view.rules.end_grain_stiffness : 1) * area / depth;
    const double strong_area = (end_grain ? view.rules.end_grain : 1) * area;
    bond.stiffness.setConstant(stiff_area * in_series(a.elastic.shear, b.elastic.shear));
    bond.stiffness(axis) = stiff_area * in_series(a.modulus(axis), b.modulus(axis));
    bond.strength.setConstant(strong_area * std::min(a.elastic.wood.shear, b.elastic.wood.shear));
    // Faces across u and v come in pairs, of which the other one presses.
    if (axis != 2) bond.strength(axis) = no_limit;
    return bond;
}

// The pocket that a tongue stands in: the one that it shares most with.
const Box3* pocket_of(const Box3& tongue, const std::vector<Box3>& pockets) {
    const Box3* best = nullptr;
    double most = 0;
    for (const Box3& pocket : pockets) {
        const Box3 shared = tongue.intersection(pocket);
        if (shared.isEmpty() || shared.volume() <= most) continue;
        most = shared.volume();
        best = &pocket;
    }
    return best;
}

double side_of(const Box3& box, Eigen::Index axis, bool high) {
    return high ? box.max()(axis) : box.min()(axis);
}

// The sides of a tongue that have wood close beside them.
void add_tongue(const JointView& view, std::size_t owner, const Box3& tongue, const Box3& pocket,
                Bonds& out) {
    const Member& other = view.members[1 - owner];
    const double thickness = std::min(tongue.sizes().x(), tongue.sizes().y());
    for (const Eigen::Index axis : {0, 1, 2}) {
        for (const bool high : {false, true}) {
            const double at = side_of(tongue, axis, high);
            const double wall = side_of(pocket, axis, high);
            const bool root = axis == 2 && std::abs(at) < fit;
            const bool open = std::abs(wall - side_of(other.body, axis, high)) < fit;
            if (root || open || std::abs(wall - at) > fit) continue;
            Box3 face = tongue.intersection(pocket);
            face.min()(axis) = face.max()(axis) = at;
            const double depth = tongue.sizes()(axis);
            Bond pressed = bearing(view, face, axis, Vec3::Constant(depth));
            // Of two opposite faces one is pressed at a time; an end has none opposite.
            pressed.one_way = axis == 2;
            if (!pressed.one_way) pressed.stiffness /= 2;
            out.bonds.push_back(pressed);
            if (view.glued) out.bonds.push_back(glue(view, face, axis, thickness / 2));
        }
    }
}

Box3 meeting_of(const JointView& view) {
    const Vec3 half(view.placed.u / 2, view.placed.v / 2, 0);
    return {-half, half};
}

// The wood that gives where a face presses on it: no deeper than twice the width of the meeting.
double depth_of(const JointView& view, std::size_t member) {
    return std::min(view.members[member].depth(), 2 * std::min(view.placed.u, view.placed.v));
}

void add_pressed(const JointView& view, const Box3& face, Bonds& out) {
    const Vec3 size = face.sizes();
    if (std::min(size.x(), size.y()) < least_shoulder) return;
    Bond pressed = bearing(view, face, 2, Vec3(depth_of(view, 0), depth_of(view, 1), 0));
    pressed.one_way = true;
    out.bonds.push_back(pressed);
}

// All of the meeting where nothing is let in, else the shoulders on the four sides of what is.
void add_meeting(const JointView& view, Bonds& out) {
    const Box3 all = meeting_of(view);
    Box3 let_in;
    for (const Tongue& tongue : out.tongues) let_in.extend(tongue.box);
    if (let_in.isEmpty()) return add_pressed(view, all, out);
    Box3 beside = all;
    for (const Eigen::Index axis : {1, 0}) {
        Box3 low = beside;
        Box3 high = beside;
        low.max()(axis) = std::min(let_in.min()(axis), all.max()(axis));
        high.min()(axis) = std::max(let_in.max()(axis), all.min()(axis));
        add_pressed(view, low, out);
        add_pressed(view, high, out);
        beside.min()(axis) = low.max()(axis);
        beside.max()(axis) = high.min()(axis);
    }
}

double length_beside(const Body& body, bool second) {
    const double from = body.frame.origin[Axis::tall].get_d();
    const double length = body.frame.w.positive ? body.length.get_d() : -body.length.get_d();
    const double low = std::min(from, from + length);
    const double high = std::max(from, from + length);
    return second ? std::max(0.0, high) - std::max(0.0, low) : std::min(0.0, high) - std::min(0.0, low);
}

Bond pin(const Fastener& fastener, BondKind kind) {
    Bond bond;
    bond.kind = kind;
    bond.centre = {fastener.body.frame.origin[Axis::wide].get_d(),
                   fastener.body.frame.origin[Axis::deep].get_d(), 0};
    return bond;
}

Bond dowel(const JointView& view, const Fastener& fastener) {
    Bond bond = pin(fastener, BondKind::dowel);
    const double diameter = fastener.body.size_u.get_d();
    const double round = std::numbers::pi * diameter;
    const double section = round * diameter / 4;
    double drawn = no_limit;
    double sideways = section * view.rules.dowel_shear;
    double soft = fastener.body.length.get_d() / 2 / (view.rules.dowel_modulus * section);
    for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
        const Elastic& wood = view.members[side].elastic;
        const double length = length_beside(fastener.body, side == 1);
        drawn = std::min(drawn, round * length * view.rules.dowel_bond);
        soft += 1 / (wood.shear * std::numbers::pi * length);  // a ring of wood as thick as the dowel
        // A stiff pin in two like holes (yield theory of Johansen, single shear, no bending of the pin).
        sideways = std::min(sideways,
                            (std::numbers::sqrt2 - 1) * dowel_bearing(wood.wood.gravity) * diameter * length);
    }
    const double side_stiffness = std::min(screw_side_load(view.members[0].elastic.wood.gravity, diameter),
                                           screw_side_load(view.members[1].elastic.wood.gravity, diameter)) /
                                  view.rules.side_slip;
    bond.stiffness = {side_stiffness, side_stiffness, 1 / soft};
    bond.strength = {sideways, sideways, drawn};
    return bond;
}

// `sideways` is false for a clip, which lets the parts slide.
Bond screw(const JointView& view, const Fastener& fastener, bool sideways) {
    Bond bond = pin(fastener, sideways ? BondKind::screw : BondKind::clip);
    const double diameter = fastener.body.size_u.get_d();
    const double in_second = length_beside(fastener.body, true);
    const double in_first = length_beside(fastener.body, false);
    const Member& bitten = view.members[in_second >= in_first ? 1 : 0];
    const double gravity = bitten.elastic.wood.gravity;
    const double drawn = (bitten.end_grain(2) ? view.rules.end_grain_screw : 1) *
                         screw_withdrawal(gravity, diameter, std::max(in_first, in_second));
    const double side = screw_side_load(gravity, diameter);
    bond.stiffness = {0, 0, drawn / view.rules.screw_slip};
    bond.strength = {no_limit, no_limit, drawn};
    if (sideways) {
        bond.stiffness.head<2>().setConstant(side / view.rules.side_slip);
        bond.strength.head<2>().setConstant(view.rules.side_reserve * side);
    }
    return bond;
}

void add_fastener(const JointView& view, const Fastener& fastener, Bonds& out) {
    if (fastener.form == FastenerForm::dowel) {
        const bool both = length_beside(fastener.body, false) > 0 && length_beside(fastener.body, true) > 0;
        if (!both) return;  // it holds nothing together
        out.bonds.push_back(dowel(view, fastener));
    } else {
        out.bonds.push_back(screw(view, fastener, fastener.form == FastenerForm::screw));
    }
}

std::optional<Member> member_view(const Piece& piece, const Joint& joint, std::size_t which) {
    const PartId part = joint.members[which].part;
    const std::optional<Elastic> elastic = elastic_of(piece, part);
    if (!elastic) return std::nullopt;
    const PlacedJoint placed = placed_joint(joint);
    return Member{*elastic, placed.axes.transpose() * placed_part(piece, part).grain(),
                  placed.to_own(box3_of(piece[part].body)), bodies_at(piece, joint, which, FeatureOp::leave),
                  bodies_at(piece, joint, which, FeatureOp::remove)};
}

}  // namespace

std::optional<Bonds> bonds_of(const Piece& piece, const Joint& joint, const Rules& rules) {
    std::optional<Member> first = member_view(piece, joint, 0);
    std::optional<Member> second = member_view(piece, joint, 1);
    if (!first || !second) return std::nullopt;
    const JointView view{
        placed_joint(joint), {std::move(*first), std::move(*second)}, !piece[joint.kind].glue.empty(), rules};
    Bonds out;
    for (const std::size_t owner : {std::size_t{0}, std::size_t{1}}) {
        for (const Box3& tongue : view.members[owner].left) {
            const Box3* pocket = pocket_of(tongue, view.members[1 - owner].removed);
            if (pocket == nullptr) continue;
            out.tongues.push_back({tongue, view.members[owner].elastic.wood.rupture});
            add_tongue(view, owner, tongue, *pocket, out);
        }
    }
    for (const Fastener& fastener : joint.fasteners) add_fastener(view, fastener, out);
    add_meeting(view, out);
    if (view.glued && out.tongues.empty() && joint.fasteners.empty()) {
        out.bonds.push_back(
            glue(view, meeting_of(view), 2, std::min(depth_of(view, 0), depth_of(view, 1)) / 2));
    }
    return out;
}

double screw_withdrawal(double gravity, double diameter, double thread) {
    return 108.25 * gravity * gravity * diameter * thread;
}

double screw_side_load(double gravity, double diameter) {
    const double k = gravity < 0.48 ? 23.17 : gravity < 0.57 ? 31.99 : 44.13;
    return k * diameter * diameter;
}

double dowel_bearing(double gravity) {
    return 114.5 * std::pow(gravity, 1.84);
}

}  // namespace rodwright::strength
