#include "compiler/workplan/glue_up/clamping.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace rodwright {
namespace {

const Rational pad = inches(1);  // of wood under each jaw, so that it does not mark the work

Box box_around(const Piece& piece, const std::vector<PartId>& parts) {
    Box box = piece[parts.front()].body;
    for (const PartId part : parts) {
        for (const Axis axis : all_axes) {
            box.low[axis] = std::min(box.low[axis], piece[part].body.low[axis]);
            box.high[axis] = std::max(box.high[axis], piece[part].body.high[axis]);
        }
    }
    return box;
}

// To the half inch or centimetre: clamps are not chosen finer.
Rational rounded_up(const Rational& length, const LengthStyle& style) {
    const Rational step = style.unit == LengthUnit::inch ? inches(1, 2) : Rational(10);
    const Rational steps = length / step;
    mpz_class whole;
    mpz_cdiv_q(whole.get_mpz_t(), steps.get_num().get_mpz_t(), steps.get_den().get_mpz_t());
    return step * whole;
}

int clamps_for(const Rational& width, const Rational& depth) {
    const double spacing = 2 * Rational(depth + pad).get_d();
    return std::max(1, static_cast<int>(std::ceil(width.get_d() / spacing - 1e-9)));
}

// One row of clamps in line with each part that is held at its ends, as many as its widest joint needs.
int count_clamps(const Piece& piece, Axis along, const GlueUp& glue_up) {
    std::map<PartId, int> rows;
    for (const BringIn& motion : glue_up.motions) {
        for (const JointId id : motion.glued) {
            const Joint& joint = piece[id];
            if (joint.frame.w.axis != along) continue;
            const Rational& depth = piece[joint.members[1].part].body.size(along);
            int& row = rows[joint.members[0].part];
            row = std::max(row, clamps_for(joint.contact_v, depth));
        }
    }
    int count = 0;
    for (const auto& [part, row] : rows) count += row;
    return count;
}

// In the plane of the clamps, where what they draw out of square shows.
Diagonal diagonal_of(const Box& box, Axis along) {
    Axis across = along == Axis::wide ? Axis::deep : Axis::wide;
    for (const Axis axis : all_axes) {
        if (axis != along && box.size(axis) > box.size(across)) across = axis;
    }
    const Rational a = box.size(along);
    const Rational b = box.size(across);
    return {along, across, a, b, std::hypot(a.get_d(), b.get_d())};
}

}  // namespace

void add_clamping(const Piece& piece, Axis along, bool pressed, GlueUp& glue_up) {
    const Box box = box_around(piece, glue_up.parts);
    if (pressed && glue_up.parts.size() > 2) glue_up.diagonal = diagonal_of(box, along);
    const int count = pressed ? count_clamps(piece, along, glue_up) : 0;
    if (count > 0)
        glue_up.clamps.push_back({along, rounded_up(box.size(along) + 2 * pad, piece.style), count});
}

}  // namespace rodwright
