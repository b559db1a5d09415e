#include "compiler/check/strength/closed_form.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rodwright::strength {

namespace {

// Whether every joint of the part is at one of its ends, and both ends have one.
bool held_by_ends(const Piece& piece, const PartModel& part) {
    std::array<bool, 2> ends{};
    for (const Joint& joint : piece.joints) {
        for (const JointMember& member : joint.members) {
            if (member.part != part.part) continue;
            const double along = unit(outward(member.face)).dot(part.placed.grain());
            if (std::abs(along) < 0.5) return false;
            ends[along > 0 ? 1 : 0] = true;
        }
    }
    return ends[0] && ends[1];
}

double own_weight(const PartModel& part) {
    return part.weight * part.placed.size.prod();
}

}  // namespace

double handbook_sag(const SimpleBeam& beam, double load, bool spread, Ends ends) {
    const bool fast = ends == Ends::held_fast;
    const double kb = spread ? (fast ? 1.0 / 384 : 5.0 / 384) : (fast ? 1.0 / 192 : 1.0 / 48);
    const double ks = spread ? 1.0 / 8 : 1.0 / 4;
    const double inertia = beam.width * std::pow(beam.depth, 3) / 12;
    const double area = 5.0 / 6 * beam.width * beam.depth;
    return kb * load * std::pow(beam.length, 3) / (beam.modulus * inertia) +
           ks * load * beam.length / (beam.shear * area);
}

double Column::slenderness() const {
    return length / std::sqrt(inertia / area);
}

double column_strength(const Column& column, double curve) {
    const double euler = std::pow(std::numbers::pi / column.slenderness(), 2) * column.modulus;
    const double ratio = euler / column.crushing;
    const double half = (1 + ratio) / (2 * curve);
    return column.area * column.crushing * (half - std::sqrt(half * half - ratio / curve));
}

std::optional<SagBounds> bounds_of(const Piece& piece, const PartModel& part, const Case& loads) {
    if (!held_by_ends(piece, part)) return std::nullopt;
    const Vec3& size = part.placed.size;
    const bool on_edge = std::abs(part.placed.axes(2, 1)) > 0.5;  // its width stands upright
    const SimpleBeam beam{size.x(), on_edge ? size.z() : size.y(), on_edge ? size.y() : size.z(),
                          part.elastic.along, part.elastic.shear};
    double spread = own_weight(part);
    for (const SpreadForce& each : loads.spread) {
        if (each.part == part.part) spread += each.per_length * size.x();
    }
    double middle = 0;
    for (const PointForce& each : loads.forces) {
        if (each.on.part != part.part) continue;
        const double off = std::abs(part.placed.to_own(each.on.at).x() - size.x() / 2);
        if (off > 0.01 * size.x()) return std::nullopt;
        middle -= each.force.z();
    }
    const auto sag = [&](Ends ends) {
        return handbook_sag(beam, spread, true, ends) + handbook_sag(beam, middle, false, ends);
    };
    return SagBounds{sag(Ends::held_fast), sag(Ends::resting)};
}

}  // namespace rodwright::strength
