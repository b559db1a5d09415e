#include "compiler/check/frame/element.hpp"

namespace rodwright::frame {

namespace {

// v -> arm x v as a matrix.
Mat3 cross_matrix(const Vec3& arm) {
    Mat3 result;
    result << 0, -arm.z(), arm.y(), arm.z(), 0, -arm.x(), -arm.y(), arm.x(), 0;
    return result;
}

// The motion of a point that a rigid arm carries, in the given rows, from the motion of the arm's node.
Mat6 carried(const Mat3& rows, const Vec3& arm) {
    Mat6 result = Mat6::Zero();
    result.topLeftCorner<3, 3>() = rows;
    result.topRightCorner<3, 3>() = -rows * cross_matrix(arm);
    result.bottomRightCorner<3, 3>() = rows;
    return result;
}

// Bending in one plane. `deflect` are the indices of the deflections of start and end, `turn` of the
// rotations, `sign` is -1 in the x-z plane, where a positive rotation about y lowers the far end.
struct Plane {
    std::array<int, 2> deflect;
    std::array<int, 2> turn;
    double sign;
};
constexpr Plane plane_xy = {{1, 7}, {5, 11}, 1};
constexpr Plane plane_xz = {{2, 8}, {4, 10}, -1};

void add_bending(Mat12& k, const Plane& plane, double bending, double shear, double length) {
    const double phi = 12 * bending / (shear * length * length);
    const double unit = bending / (length * length * length * (1 + phi));
    for (std::size_t i = 0; i < 2; ++i) {
        for (std::size_t j = 0; j < 2; ++j) {
            const double same = i == j ? 1 : -1;
            k(plane.deflect[i], plane.deflect[j]) = 12 * unit * same;
            k(plane.turn[i], plane.turn[j]) = (i == j ? 4 + phi : 2 - phi) * unit * length * length;
            const double coupling = plane.sign * 6 * unit * length * (i == 0 ? 1 : -1);
            k(plane.deflect[i], plane.turn[j]) = coupling;
            k(plane.turn[j], plane.deflect[i]) = coupling;
        }
    }
}

void add_axial(Mat12& k, int start, int end, double stiffness) {
    k(start, start) = k(end, end) = stiffness;
    k(start, end) = k(end, start) = -stiffness;
}

}  // namespace

PlacedBeam place_beam(const Model& model, const Beam& beam, bool& usable) {
    PlacedBeam placed;
    const Vec3 from = model.nodes[beam.start].at + beam.start_offset;
    const Vec3 along = model.nodes[beam.end].at + beam.end_offset - from;
    placed.length = along.norm();
    const Vec3 x = along / placed.length;
    const Vec3 square = beam.across - beam.across.dot(x) * x;
    usable = placed.length > 0 && square.norm() > 1e-9 * beam.across.norm();
    if (!usable) return placed;
    const Vec3 y = square.normalized();
    placed.rows.row(0) = x;
    placed.rows.row(1) = y;
    placed.rows.row(2) = x.cross(y);
    placed.to_local.topLeftCorner<6, 6>() = carried(placed.rows, beam.start_offset);
    placed.to_local.bottomRightCorner<6, 6>() = carried(placed.rows, beam.end_offset);
    return placed;
}

Mat12 beam_stiffness(const Beam& beam, double length) {
    const Section& s = beam.section;
    Mat12 k = Mat12::Zero();
    add_axial(k, 0, 6, beam.modulus * s.area / length);
    add_axial(k, 3, 9, beam.shear_modulus * s.torsion / length);
    add_bending(k, plane_xy, beam.modulus * s.inertia_z, beam.shear_modulus * s.shear_y, length);
    add_bending(k, plane_xz, beam.modulus * s.inertia_y, beam.shear_modulus * s.shear_z, length);
    return k;
}

Vec12 held_ends(const Vec3& per_length, double length) {
    Vec12 held = Vec12::Zero();
    held.segment<3>(0) = -per_length * length / 2;
    held.segment<3>(6) = held.segment<3>(0);
    const double twelfth = length * length / 12;
    held(4) = per_length.z() * twelfth;
    held(10) = -held(4);
    held(5) = -per_length.y() * twelfth;
    held(11) = -held(5);
    return held;
}

Eigen::Matrix<double, 6, 12> spring_motion(const Model& model, const Spring& spring) {
    Eigen::Matrix<double, 6, 12> result;
    const Mat3 rows = spring.axes.transpose();
    result.leftCols<6>() = -carried(rows, spring.point - model.nodes[spring.first].at);
    result.rightCols<6>() = carried(rows, spring.point - model.nodes[spring.second].at);
    return result;
}

}  // namespace rodwright::frame
