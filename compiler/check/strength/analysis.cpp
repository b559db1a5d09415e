#include "compiler/check/strength/analysis.hpp"

namespace rodwright::strength {

namespace {

constexpr int most_rounds = 20;
constexpr double hardly = 1e-7;  // mm: an opening smaller than this is none

void add_own_weight(const Structure& structure, std::vector<Vec3>& per_length) {
    for (const std::optional<PartModel>& part : structure.parts) {
        if (!part) continue;
        for (const Element& element : part->elements) {
            const double area = structure.model.beams[element.beam].section.area;
            per_length[element.beam].z() -= part->weight * area;
        }
    }
}

// A part's load is shared between its strips by their width.
void add_spread(const PartModel& part, double load, std::vector<Vec3>& per_length) {
    for (const Element& element : part.elements) {
        const double share = element.width > 0 ? element.width / part.placed.size.y() : 1;
        per_length[element.beam].z() -= load * share;
    }
}

frame::NodeLoad at_node(const Structure& structure, const PartModel& part, const PointForce& force) {
    frame::NodeLoad load;
    load.node = part.node_near(force.on.at);
    const Vec3 arm = force.on.at - structure.model.nodes[load.node].at;
    load.force << force.force, arm.cross(force.force);
    return load;
}

// Whether any contact changed between open and pressed.
bool let_go(Structure& structure, const frame::Solution& solution) {
    bool changed = false;
    for (JointSpring& joint : structure.joints) {
        const Vec3 normal = joint.placed.axes.col(2);
        for (Contact& contact : joint.contacts) {
            const double opening =
                carried(solution.spring_motions[joint.spring], contact.at - joint.placed.origin).dot(normal);
            const bool pressed = contact.pressed ? opening < hardly : opening < -hardly;
            changed = changed || pressed != contact.pressed;
            contact.pressed = pressed;
        }
    }
    return changed;
}

}  // namespace

std::optional<CaseResult> solve_case(Structure& structure, const Case& loads, frame::Fault& fault) {
    CaseResult result;
    result.per_length.assign(structure.model.beams.size(), Vec3::Zero());
    add_own_weight(structure, result.per_length);
    frame::LoadCase applied;
    for (const SpreadForce& spread : loads.spread) {
        const auto& part = structure.parts[static_cast<std::size_t>(spread.part)];
        if (part) add_spread(*part, spread.per_length, result.per_length);
    }
    for (const PointForce& force : loads.forces) {
        const auto& part = structure.parts[static_cast<std::size_t>(force.on.part)];
        if (part) applied.on_nodes.push_back(at_node(structure, *part, force));
    }
    for (std::size_t i = 0; i < result.per_length.size(); ++i) {
        if (!result.per_length[i].isZero()) applied.on_beams.push_back({i, result.per_length[i]});
    }
    for (JointSpring& joint : structure.joints) {
        for (Contact& contact : joint.contacts) contact.pressed = true;
    }
    for (int round = 0; round < most_rounds; ++round) {
        structure.update_springs();
        const std::optional<frame::Factored> factored = frame::Factored::make(structure.model, fault);
        if (!factored) return std::nullopt;
        std::optional<frame::Solution> solution = factored->solve(applied);
        if (!solution) {
            fault = {frame::Fault::Kind::bad_number, structure.model.nodes.front().name};
            return std::nullopt;
        }
        result.solution = std::move(*solution);
        if (!let_go(structure, result.solution)) return result;
    }
    result.settled = false;
    return result;
}

}  // namespace rodwright::strength
