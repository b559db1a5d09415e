#include "compiler/check/strength/structure.hpp"

#include <algorithm>
#include <cmath>

#include "compiler/check/strength/joint_springs.hpp"

namespace rodwright::strength {

namespace {

constexpr double on_floor = 0.01;  // mm above the lowest face of the piece
constexpr double standard_gravity = 9.80665;
constexpr double wide_foot = 1.0 / 3;   // of the piece: such a foot does not rock
constexpr double rigid_in_plane = 100;  // ribs over their own stiffness: strips of a plate shear together

bool stands_on_floor(const Piece& piece, const Part& part) {
    return box3_of(part.body).min().z() <= box3_of(piece.box).min().z() + on_floor;
}

// Parts that joints, one after another, connect with one that stands on the floor.
std::vector<bool> supported_parts(const Piece& piece) {
    std::vector<bool> held(piece.parts.size());
    for (std::size_t i = 0; i < held.size(); ++i) held[i] = stands_on_floor(piece, piece.parts[i]);
    std::vector<std::vector<std::size_t>> beside(held.size());
    for (const Joint& joint : piece.joints) {
        const auto a = static_cast<std::size_t>(joint.members[0].part);
        const auto b = static_cast<std::size_t>(joint.members[1].part);
        beside[a].push_back(b);
        beside[b].push_back(a);
    }
    std::vector<std::size_t> open;
    for (std::size_t i = 0; i < held.size(); ++i) {
        if (held[i]) open.push_back(i);
    }
    while (!open.empty()) {
        const std::size_t part = open.back();
        open.pop_back();
        for (const std::size_t next : beside[part]) {
            if (held[next]) continue;
            held[next] = true;
            open.push_back(next);
        }
    }
    return held;
}

class Builder {
  public:
    Builder(const Piece& piece, Sections& sections, const Rules& rules)
        : piece_(piece), sections_(sections), rules_(rules), attached_(piece.parts.size()) {
        out_.parts.resize(piece.parts.size());
    }

    std::optional<Structure> run(const std::vector<PartPoint>& loaded, std::string& unknown) {
        const std::vector<bool> held = supported_parts(piece_);
        for (std::size_t i = 0; i < held.size(); ++i) {
            if (held[i] && !add_part(i)) {
                unknown = piece_.parts[i].name;
                return std::nullopt;
            }
        }
        for (std::size_t i = 0; i < piece_.joints.size(); ++i) add_joint(i);
        for (const PartPoint& point : loaded) attach(static_cast<std::size_t>(point.part), point.at);
        for (std::size_t i = 0; i < held.size(); ++i) {
            if (held[i]) divide_part(i);
        }
        for (JointSpring& joint : out_.joints) add_spring(joint);
        out_.update_springs();
        return std::move(out_);
    }

  private:
    const Piece& piece_;
    Sections& sections_;
    const Rules& rules_;
    Structure out_;
    std::vector<std::vector<Vec3>> attached_;  // by part, in its own axes

    bool add_part(std::size_t index) {
        const auto id = static_cast<PartId>(index);
        const std::optional<Elastic> elastic = elastic_of(piece_, id);
        if (!elastic) return false;
        const Wood* wood = piece_.find_wood(piece_[piece_[id].kind].wood);
        out_.parts[index] = PartModel{
            id, placed_part(piece_, id), *elastic, wood->density.get_d() * standard_gravity * 1e-9, {}, 0,
            {}};
        return true;
    }

    void attach(std::size_t part, const Vec3& at) {
        if (out_.parts[part]) attached_[part].push_back(out_.parts[part]->placed.to_own(at));
    }

    void add_joint(std::size_t index) {
        const Joint& joint = piece_.joints[index];
        const auto first = static_cast<std::size_t>(joint.members[0].part);
        const auto second = static_cast<std::size_t>(joint.members[1].part);
        if (!out_.parts[first] || !out_.parts[second]) return;
        const std::optional<Bonds> bonds = bonds_of(piece_, joint, rules_);
        if (!bonds) return;
        for (JointSpring& spring : joint_springs(piece_, index, *bonds)) {
            attach(first, spring.placed.origin);
            attach(second, spring.placed.origin);
            out_.joints.push_back(std::move(spring));
        }
    }

    void divide_part(std::size_t index) {
        PartModel& part = *out_.parts[index];
        part.layout = lay_out(part.placed.size, attached_[index]);
        part.first_node = out_.model.nodes.size();
        const std::vector<double>& stations = part.layout.stations;
        for (std::size_t i = 0; i < stations.size(); ++i) {
            for (const double y : part.layout.lines) {
                frame::Node node;
                node.name = piece_.parts[index].name;
                node.at = part.placed.to_piece(Vec3(stations[i], y, part.placed.size.z() / 2));
                out_.model.nodes.push_back(std::move(node));
            }
        }
        for (std::size_t i = 0; i + 1 < stations.size(); ++i) {
            for (std::size_t j = 0; j < part.layout.lines.size(); ++j) add_element(part, i, j);
        }
        if (part.layout.plate()) add_ribs(part);
        if (stands_on_floor(piece_, piece_.parts[index])) support(part);
    }

    frame::Beam beam(const PartModel& part, std::size_t start, std::size_t end) const {
        frame::Beam made;
        made.name = piece_[part.part].name;
        made.start = start;
        made.end = end;
        made.shear_modulus = part.elastic.shear;
        return made;
    }

    void add_element(PartModel& part, std::size_t station, std::size_t line) {
        const double from = part.layout.stations[station];
        const double to = part.layout.stations[station + 1];
        frame::Beam made = beam(part, part.node(station, line), part.node(station + 1, line));
        made.across = part.placed.axes.col(1);
        made.modulus = part.elastic.along;
        Element element{out_.model.beams.size(), line, from, to, 0};
        if (part.layout.plate()) {
            element.width = part.layout.width_of(line, part.placed.size.y());
            made.section = strip(element.width, part.placed.size.z());
        } else {
            made.section = sections_.at(piece_[part.part].kind, (from + to) / 2).as_beam();
        }
        part.elements.push_back(element);
        out_.model.beams.push_back(std::move(made));
    }

    // Twisting is shared between strips and ribs: half of b t^3 / 3 each.
    static frame::Section strip(double width, double thick) {
        frame::Section section = rectangle(width, thick).as_beam();
        section.torsion = width * thick * thick * thick / 6;
        return section;
    }

    void add_ribs(PartModel& part) {
        for (std::size_t i = 0; i < part.layout.stations.size(); ++i) {
            frame::Section section =
                strip(part.layout.length_of(i, part.placed.size.x()), part.placed.size.z());
            section.inertia_z *= rigid_in_plane;
            section.shear_y *= rigid_in_plane;
            for (std::size_t j = 0; j + 1 < part.layout.lines.size(); ++j) {
                frame::Beam rib = beam(part, part.node(i, j), part.node(i, j + 1));
                rib.across = part.placed.grain();
                rib.modulus = part.elastic.across;
                rib.section = section;
                out_.model.beams.push_back(std::move(rib));
            }
        }
    }

    // Feet do not slide and turn freely; one that is wide beside the piece neither rocks nor spins.
    void support(const PartModel& part) {
        const bool upright = std::abs(part.placed.grain().z()) > 0.5;
        const std::size_t last = part.layout.stations.size() - 1;
        const Vec3 piece_size = box3_of(piece_.box).sizes();
        const Vec3 size = box3_of(piece_[part.part].body).sizes();
        for (const std::size_t station : {std::size_t{0}, last}) {
            if (upright && (station == 0) != (part.placed.grain().z() > 0)) continue;
            for (std::size_t line = 0; line < part.layout.lines.size(); ++line) {
                std::array<bool, 6>& fixed = out_.model.nodes[part.node(station, line)].fixed;
                fixed[0] = fixed[1] = fixed[2] = true;
                fixed[4] = upright && size.x() >= wide_foot * piece_size.x();
                fixed[3] = upright && size.y() >= wide_foot * piece_size.y();
                fixed[5] = fixed[3] || fixed[4];
            }
        }
    }

    void add_spring(JointSpring& joint) {
        const Joint& graph = piece_.joints[joint.joint];
        frame::Spring spring;
        spring.name = piece_[graph.members[0].part].name;
        spring.point = joint.placed.origin;
        spring.first = node_of(graph.members[0].part, spring.point);
        spring.second = node_of(graph.members[1].part, spring.point);
        joint.spring = out_.model.springs.size();
        out_.model.springs.push_back(std::move(spring));
    }

    std::size_t node_of(PartId part, const Vec3& point) const {
        return out_.parts[static_cast<std::size_t>(part)]->node_near(point);
    }
};

}  // namespace

std::size_t PartModel::node_near(const Vec3& point) const {
    const Vec3 own = placed.to_own(point);
    return node(layout.station_near(own.x()), layout.line_near(own.y()));
}

void Structure::update_springs() {
    for (const JointSpring& joint : joints) model.springs[joint.spring].stiffness = stiffness_of(joint);
}

Vec3 carried(const frame::Vec6& motion, const Vec3& arm) {
    return motion.head<3>() + motion.tail<3>().cross(arm);
}

std::optional<Structure> build_structure(const Piece& piece, Sections& sections, const Rules& rules,
                                         const std::vector<PartPoint>& loaded, std::string& unknown) {
    return Builder(piece, sections, rules).run(loaded, unknown);
}

}  // namespace rodwright::strength
