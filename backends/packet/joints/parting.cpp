#include "backends/packet/joints/parting.hpp"

#include <algorithm>

#include <Eigen/SparseCholesky>

namespace rodwright::packet {

Direction way_in(const Joint& joint) {
    return joint.slides.value_or(joint.frame.w);
}

double depth_of(const Piece& piece, const Joint& joint) {
    const Axis axis = way_in(joint).axis;
    if (axis == joint.frame.u.axis) return joint.contact_u.get_d();
    if (axis == joint.frame.v.axis) return joint.contact_v.get_d();
    const Kind& kind = piece[piece[joint.members[0].part].kind];
    double reach = 0;
    for (const Extent& extent : kind.extend) {
        reach = std::max({reach, extent.low.get_d(), extent.high.get_d()});
    }
    return reach;
}

namespace {

// One axis at a time: moves along it, as an equation for each part.
class Pulls {
  public:
    Pulls(const Piece& piece, Axis axis)
        : axis_(axis), wanted_(Eigen::VectorXd::Zero(static_cast<Eigen::Index>(piece.parts.size()))) {
        // A little pull to where it was keeps parts without joints in place, and the whole from drifting.
        constexpr double rest = 1e-6;
        for (Eigen::Index i = 0; i < wanted_.size(); ++i) entries_.emplace_back(i, i, rest);
    }

    // `apart`: how far the first member shall be from where it is in the second, along the way out.
    void add(const Joint& joint, bool fastening, double apart) {
        // A screw or a button lets its part go anywhere: sideways it hardly pulls.
        constexpr double loose = 0.01;
        const Direction way = way_in(joint);
        const double weight = fastening && way.axis != axis_ ? loose : 1;
        const auto first = static_cast<Eigen::Index>(joint.members[0].part);
        const auto second = static_cast<Eigen::Index>(joint.members[1].part);
        entries_.emplace_back(first, first, weight);
        entries_.emplace_back(second, second, weight);
        entries_.emplace_back(first, second, -weight);
        entries_.emplace_back(second, first, -weight);
        if (way.axis != axis_) return;
        wanted_(first) -= way.positive ? apart : -apart;
        wanted_(second) += way.positive ? apart : -apart;
    }

    Eigen::VectorXd moves() const {
        Eigen::SparseMatrix<double> matrix(wanted_.size(), wanted_.size());
        matrix.setFromTriplets(entries_.begin(), entries_.end());
        return Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>>(matrix).solve(wanted_);
    }

  private:
    Axis axis_;
    std::vector<Eigen::Triplet<double>> entries_;
    Eigen::VectorXd wanted_;
};

}  // namespace

std::vector<Point3> parting(const Piece& piece, double gap) {
    std::vector<Point3> moves(piece.parts.size());
    for (const Axis axis : all_axes) {
        Pulls pulls(piece, axis);
        for (const Joint& joint : piece.joints)
            pulls.add(joint, piece[joint.kind].fastening, depth_of(piece, joint) + gap);
        const Eigen::VectorXd along = pulls.moves();
        for (std::size_t i = 0; i < moves.size(); ++i)
            moves[i][static_cast<std::size_t>(axis)] = along(static_cast<Eigen::Index>(i));
    }
    return moves;
}

}  // namespace rodwright::packet
