// A piece as a frame: parts as beams and grillages, joints as springs, feet on the floor.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/check/frame/solve.hpp"
#include "compiler/check/strength/bonds.hpp"
#include "compiler/check/strength/layout.hpp"
#include "compiler/check/strength/sections.hpp"

namespace rodwright::strength {

// A stretch of a part along its grain, one beam.
struct Element {
    std::size_t beam = 0;
    std::size_t line = 0;
    double from = 0;  // along the grain
    double to = 0;
    double width = 0;  // of a plate's strip; 0 for a single beam
};

struct PartModel {
    PartId part{};
    PlacedPart placed;
    Elastic elastic;
    double weight = 0;  // N/mm^3
    Layout layout;
    std::size_t first_node = 0;
    std::vector<Element> elements;

    std::size_t node(std::size_t station, std::size_t line) const {
        return first_node + station * layout.lines.size() + line;
    }
    std::size_t node_near(const Vec3& point) const;  // in the piece's axes
};

// A bearing spot that presses only.
struct Contact {
    Vec3 at = Vec3::Zero();  // in the piece's axes
    double stiffness = 0;
    bool pressed = true;
};

// A stretch of a joint, one spring. Bonds are in the joint's axes; their stiffness is in `held`, contacts are
// not.
struct JointSpring {
    std::size_t joint = 0;
    std::size_t spring = 0;
    PlacedJoint placed;
    Bonds bonds;
    std::vector<Contact> contacts;
    frame::Mat6 held = frame::Mat6::Zero();
};

struct Structure {
    frame::Model model;
    std::vector<std::optional<PartModel>> parts;  // by part; empty for one that hangs on nothing
    std::vector<JointSpring> joints;

    // Puts the springs' stiffness together from what holds and what is pressed now.
    void update_springs();
};

// Where a load gets at a part, in the piece's axes.
struct PartPoint {
    PartId part{};
    Vec3 at = Vec3::Zero();
};

// Empty, with the part's name, if the wood of one that is needed is not known.
std::optional<Structure> build_structure(const Piece& piece, Sections& sections, const Rules& rules,
                                         const std::vector<PartPoint>& loaded, std::string& unknown);

// The way from the motion of a node, or of a spring at its point, to that of a point on a rigid arm from
// there.
Vec3 carried(const frame::Vec6& motion, const Vec3& arm);

}  // namespace rodwright::strength
