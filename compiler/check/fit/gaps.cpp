// Ends that stop just short of the face they should meet.
#include <fmt/format.h>

#include <set>

#include "compiler/check/check_data.hpp"
#include "compiler/check/checks.hpp"
#include "compiler/check/words.hpp"

namespace rodwright {

namespace {

constexpr double least_gap = 1e-3;

using Joined = std::set<std::pair<PartId, PartId>>;

Joined joined_parts(const Piece& piece) {
    Joined joined;
    for (const Joint& joint : piece.joints) {
        const PartId a = joint.members[0].part;
        const PartId b = joint.members[1].part;
        joined.emplace(std::min(a, b), std::max(a, b));
    }
    return joined;
}

// From the face of `from` to the face of `to` before it; below 0 behind it.
double gap_before(const Part& from, Face face, const Part& to) {
    const double here = from.body.at(face).get_d();
    const double there = to.body.at(opposite(face)).get_d();
    return is_far(face) ? there - here : here - there;
}

double cover(const Part& from, Face face, const Part& to) {
    double share = 1;
    for (const Axis axis : all_axes) {
        if (axis == axis_of(face)) continue;
        const Rational low = std::max(from.body.low[axis], to.body.low[axis]);
        const Rational high = std::min(from.body.high[axis], to.body.high[axis]);
        share *= high > low ? Rational((high - low) / from.body.size(axis)).get_d() : 0;
    }
    return share;
}

Axis grain_of(const Part& part) {
    return part.placement.turn.apply(Direction{Axis::wide, true}).axis;
}

void look_at(const Piece& piece, const Part& from, const Part& to, Findings& findings) {
    const GapLimit& limit = check_data().fit.gap;
    for (const bool far_end : {false, true}) {
        const Face end = face_of(grain_of(from), far_end);
        const double gap = gap_before(from, end, to);
        if (gap <= least_gap || gap > limit.widest || cover(from, end, to) < limit.cover) continue;
        findings.diagnostics.add(
            diagnose(Code::gap_left, from.where,
                     fmt::format("the {} end of `{}` stops {} short of `{}`", face_name(end), from.name,
                                 about(gap, piece.style), to.name))
                .label(to.where, "this part")
                .hint("place the end by the face that it meets, and join them; a gap that is meant is "
                      "accepted with "
                      "`accept W1101 because \"...\"`"));
    }
}

}  // namespace

void check_gaps(const CheckInput& input, Findings& findings) {
    const Piece& piece = input.piece;
    const Joined joined = joined_parts(piece);
    for (const auto& [a, b] : near_pairs(input.meshes, check_data().fit.gap.widest)) {
        if (joined.contains({static_cast<PartId>(a), static_cast<PartId>(b)})) continue;
        if (piece.parts[a].assembly != piece.parts[b].assembly) continue;
        look_at(piece, piece.parts[a], piece.parts[b], findings);
        look_at(piece, piece.parts[b], piece.parts[a], findings);
    }
}

}  // namespace rodwright
