// A frame of straight bars in space: what is to be solved. Newtons, millimetres, megapascals, radians.
//
// Axes of a node and of loads are the model's own. Six motions belong to a node: along and about the three
// axes.
#pragma once

#include <Eigen/Dense>
#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace rodwright::frame {

using Vec3 = Eigen::Vector3d;
using Mat3 = Eigen::Matrix3d;
using Vec6 = Eigen::Matrix<double, 6, 1>;  // three along, three about: motions, or forces and moments
using Mat6 = Eigen::Matrix<double, 6, 6>;

struct Node {
    std::string name;  // of what stands there, for messages
    Vec3 at = Vec3::Zero();
    std::array<bool, 6> fixed{};
};

// About the beam's own axes. A shear area is the area that carries shear along that axis: 5/6 of a rectangle.
struct Section {
    double area = 0;
    double shear_y = 0;
    double shear_z = 0;
    double inertia_y = 0;  // resists bending in the x-z plane
    double inertia_z = 0;  // resists bending in the x-y plane
    double torsion = 0;
};

// A Timoshenko beam: straight, uniform, shear deflection included. It runs from its start node to its end
// node, each moved by an offset that is rigid. Its x runs along it, y is `across` made square to x, z = x
// cross y.
struct Beam {
    std::string name;
    std::size_t start = 0;
    std::size_t end = 0;
    Vec3 start_offset = Vec3::Zero();
    Vec3 end_offset = Vec3::Zero();
    Vec3 across = Vec3::UnitY();
    Section section;
    double modulus = 0;        // E along the beam
    double shear_modulus = 0;  // G
};

// What holds two nodes together at a point, through rigid arms: forces = stiffness x motion of the second at
// the point less that of the first, in the columns of `axes`. Symmetric, no negative energy.
struct Spring {
    std::string name;
    std::size_t first = 0;
    std::size_t second = 0;
    Vec3 point = Vec3::Zero();
    Mat3 axes = Mat3::Identity();
    Mat6 stiffness = Mat6::Zero();
};

struct Model {
    std::vector<Node> nodes;
    std::vector<Beam> beams;
    std::vector<Spring> springs;
};

struct NodeLoad {
    std::size_t node = 0;
    Vec6 force = Vec6::Zero();
};

struct BeamLoad {
    std::size_t beam = 0;
    Vec3 per_length = Vec3::Zero();  // along the model's axes, all along the beam
};

struct LoadCase {
    std::vector<NodeLoad> on_nodes;
    std::vector<BeamLoad> on_beams;
};

}  // namespace rodwright::frame
