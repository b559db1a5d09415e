#include "compiler/check/strength/judge.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "compiler/check/frame/inside.hpp"
#include "compiler/check/strength/closed_form.hpp"

namespace rodwright::strength {

namespace {

std::string_view mode_of(BondKind kind) {
    switch (kind) {
        case BondKind::glue:
            return "glue";
        case BondKind::dowel:
            return "dowel";
        case BondKind::screw:
            return "screw";
        case BondKind::clip:
            return "screw of a clip";
        case BondKind::bearing:
        case BondKind::end_grain_glue:
            break;
    }
    return "bearing";
}

double strength_of(const Bonds& bonds, bool glue_only) {
    double total = 0;
    for (const Bond& bond : bonds.bonds) {
        const bool glue = bond.kind == BondKind::glue || bond.kind == BondKind::end_grain_glue;
        if (std::isfinite(bond.strength.z()) && (glue || !glue_only)) total += bond.strength.z();
    }
    return total;
}

// Glue on end grain, and a glued face that is a small part of all glue, let go at their edges before the
// joint breaks, and what is let in goes on bearing: of these only whether the joint is drawn apart is judged.
constexpr double small_part = 0.2;
constexpr double upright = 0.7;  // of the grain's direction: a post, not a rail

bool judged_at_corners(const Bond& bond, double glue) {
    if (bond.kind == BondKind::glue) return bond.strength.z() > small_part * glue;
    return bond.kind != BondKind::bearing && bond.kind != BondKind::end_grain_glue;
}

// Of all that holds against drawing apart.
double pull_use(const Bonds& bonds, double pull) {
    const double strength = strength_of(bonds, false);
    return strength > 0 ? std::max(pull, 0.0) / strength : 0;
}

// How much of a bond's strength its motion uses, where that is most: at a corner of its rectangle. What
// presses along w is not counted: the wood beside it takes that.
double use_of(const Bond& bond, const JointSpring& joint, const frame::Vec6& motion) {
    double worst = 0;
    for (const double a : {-1.0, 1.0}) {
        for (const double b : {-1.0, 1.0}) {
            for (const double c : {-1.0, 1.0}) {
                const Vec3 corner = bond.centre + Vec3(a, b, c).cwiseProduct(bond.half);
                Vec3 moved = joint.placed.axes.transpose() * carried(motion, joint.placed.axes * corner);
                moved.z() = std::max(moved.z(), 0.0);
                const Vec3 use = bond.stiffness.cwiseProduct(moved).cwiseQuotient(bond.strength);
                worst = std::max(worst, use.norm());
            }
        }
    }
    return worst;
}

// Of the greatest tongue, at its root, as a beam of its own; forces in the joint's axes, about its origin.
double tongue_use(const JointSpring& joint, const Vec3& force, const Vec3& moment) {
    const auto area = [](const Tongue& tongue) { return tongue.box.sizes().x() * tongue.box.sizes().y(); };
    const auto greatest = std::ranges::max_element(joint.bonds.tongues, {}, area);
    if (greatest == joint.bonds.tongues.end()) return 0;
    const Vec3 size = greatest->box.sizes();
    const Vec3 root(greatest->box.center().x(), greatest->box.center().y(), 0);
    const Vec3 there = moment - root.cross(force);
    const double bending = std::abs(there.y()) / (size.y() * size.x() * size.x() / 6) +
                           std::abs(there.x()) / (size.x() * size.y() * size.y() / 6);
    return (bending + std::max(force.z(), 0.0) / area(*greatest)) / greatest->rupture;
}

}  // namespace

Judge::Judge(const Piece& piece, const Structure& structure, Sections& sections, const Rules& rules)
    : piece_(piece), structure_(structure), sections_(sections), rules_(rules), glue_(piece.joints.size()) {
    for (std::size_t i = 0; i < piece.parts.size(); ++i) verdict_.parts.push_back({static_cast<PartId>(i)});
    for (std::size_t i = 0; i < piece.joints.size(); ++i) verdict_.joints.push_back({i, 0, {}, 0, 0, 0});
    for (const JointSpring& joint : structure.joints) glue_[joint.joint] += strength_of(joint.bonds, true);
}

void Judge::add(std::size_t index, const Case& loads, const CaseResult& result) {
    const double share = (loads.lasting ? rules_.lasting : 1) / rules_.safety;
    for (const std::optional<PartModel>& part : structure_.parts) {
        if (!part) continue;
        judge_part(*part, share, index, result);
        judge_column(*part, share, index, result);
    }
    for (const JointSpring& joint : structure_.joints) judge_joint(joint, share, index, result);
    if (loads.push) {
        const PointForce& push = loads.forces.front();
        const auto& part = structure_.parts[static_cast<std::size_t>(push.on.part)];
        if (!part) return;
        const frame::Vec6& motion = result.solution.motions[part->node_near(push.on.at)];
        const double height = push.on.at.z() - box3_of(piece_.box).min().z();
        verdict_.sways.push_back({motion.head<2>().norm(), height, index});
        return;
    }
    if (!loads.sag) return;
    for (const PartId carrier : loads.carriers) {
        const auto& part = structure_.parts[static_cast<std::size_t>(carrier)];
        if (part) judge_sag(*part, loads.lasting ? rules_.creep : 1, index, result);
    }
}

void Judge::judge_part(const PartModel& part, double share, std::size_t index, const CaseResult& result) {
    PartResult& worst = verdict_.parts[static_cast<std::size_t>(part.part)];
    const KindId kind = piece_[part.part].kind;
    const double allowed = part.elastic.wood.rupture * share;
    const Mat3 rows = part.placed.axes.transpose();
    for (const Element& element : part.elements) {
        std::vector<double> places = {element.from, (element.from + element.to) / 2, element.to};
        for (const double pocket : sections_.pockets(kind)) {
            if (pocket > element.from && pocket < element.to) places.push_back(pocket);
        }
        for (const double at : places) {
            const frame::Vec6 forces =
                frame::inside(result.solution.beams[element.beam], rows * result.per_length[element.beam],
                              at - element.from);
            const CrossSection& section =
                element.width > 0 ? rectangle(element.width, part.placed.size.z()) : sections_.at(kind, at);
            const double stress = section.stress(forces(0), forces(4), forces(5));
            if (!std::isfinite(stress)) continue;  // a sliver without a section to speak of
            if (worst.allowed > 0 && stress / allowed <= worst.use()) continue;
            worst = {part.part, stress, allowed, at, index};
        }
    }
}

// Its greatest press on its weakest section.
void Judge::judge_column(const PartModel& part, double share, std::size_t index, const CaseResult& result) {
    if (part.layout.plate()) return;
    const KindId kind = piece_[part.part].kind;
    const Mat3 rows = part.placed.axes.transpose();
    const bool post = std::abs(part.placed.grain().z()) > upright;
    Column column{part.placed.size.x() * (post ? rules_.post_length : 1),
                  std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(),
                  part.elastic.along, part.elastic.wood.crushing};
    double pressed = 0;
    for (const Element& element : part.elements) {
        const double middle = (element.to - element.from) / 2;
        const frame::Vec6 forces = frame::inside(result.solution.beams[element.beam],
                                                 rows * result.per_length[element.beam], middle);
        pressed = std::max(pressed, -forces(0));
        const CrossSection& section = sections_.at(kind, element.from + middle);
        column.area = std::min(column.area, section.area);
        column.inertia = std::min(column.inertia, section.least_inertia());
    }
    const double strength = column_strength(column, rules_.column_curve);
    if (pressed <= 0 || !std::isfinite(strength) || strength <= 0) return;
    const ColumnResult made{part.part, pressed, strength * share, column.slenderness(), index};
    const auto known = std::ranges::find(verdict_.columns, part.part, &ColumnResult::part);
    if (known == verdict_.columns.end()) {
        verdict_.columns.push_back(made);
    } else if (made.use() > known->use()) {
        *known = made;
    }
}

void Judge::judge_joint(const JointSpring& joint, double share, std::size_t index, const CaseResult& result) {
    JointResult& worst = verdict_.joints[joint.joint];
    const frame::Vec6& motion = result.solution.spring_motions[joint.spring];
    const frame::Vec6 forces = structure_.model.springs[joint.spring].stiffness * motion;
    const auto offer = [&](double use, std::string_view mode) {
        if (!std::isfinite(use) || use / share <= worst.use) return;
        worst = {
            joint.joint, use / share, std::string(mode), forces.head<3>().norm(), forces.tail<3>().norm(),
            index};
    };
    const double glue = glue_[joint.joint];
    for (const Bond& bond : joint.bonds.bonds) {
        if (judged_at_corners(bond, glue)) offer(use_of(bond, joint, motion), mode_of(bond.kind));
    }
    const Mat3 rows = joint.placed.axes.transpose();
    // The sign of a moment in a left-handed frame does not matter here.
    const double hand = joint.placed.axes.determinant();
    const frame::Vec6 through = joint.held * motion;  // shoulders carry the rest
    offer(pull_use(joint.bonds, (rows * forces.head<3>()).z()), "pull");
    offer(tongue_use(joint, rows * through.head<3>(), hand * (rows * through.tail<3>())),
          "bending of the tongue");
}

void Judge::judge_sag(const PartModel& part, double creep, std::size_t index, const CaseResult& result) {
    const std::size_t last = part.layout.stations.size() - 1;
    const double span = part.placed.size.x();
    Sag worst{part.part, 0, span, index};
    for (std::size_t line = 0; line < part.layout.lines.size(); ++line) {
        const auto height = [&](std::size_t station) {
            return result.solution.motions[part.node(station, line)](2);
        };
        for (std::size_t station = 1; station < last; ++station) {
            const double along = part.layout.stations[station] / span;
            const double chord = height(0) * (1 - along) + height(last) * along;
            worst.sag = std::max(worst.sag, creep * (chord - height(station)));
        }
    }
    const auto known = std::ranges::find(verdict_.sags, part.part, &Sag::part);
    if (known == verdict_.sags.end()) {
        verdict_.sags.push_back(worst);
    } else if (worst.sag > known->sag) {
        *known = worst;
    }
}

}  // namespace rodwright::strength
