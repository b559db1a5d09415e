// Parts that are made, and no longer as large as the design draws them.
#include <fmt/format.h>

#include <algorithm>

#include "compiler/check/checks.hpp"
#include "compiler/check/words.hpp"
#include "compiler/words.hpp"

namespace rodwright {

namespace {

// Which of a part's own sizes runs along that axis of the piece.
Axis own_axis(const Part& part, Axis axis) {
    for (const Axis own : all_axes) {
        if (part.placement.turn.apply(Direction{own, true}).axis == axis) return own;
    }
    return axis;
}

std::string_view amiss(Axis own, bool less) {
    constexpr std::array<std::array<std::string_view, 2>, 3> words = {
        {{"long", "short"}, {"wide", "narrow"}, {"thick", "thin"}}};
    return words[static_cast<std::size_t>(own)][less ? 1 : 0];
}

// "`leg[left front]` (its front end) and ...": what the part meets at both ends of the axis.
std::string met_along(const Piece& piece, PartId part, Axis axis) {
    std::vector<std::string> met;
    for (const Joint& joint : piece.joints) {
        for (std::size_t i = 0; i < joint.members.size(); ++i) {
            const JointMember& member = joint.members[i];
            if (member.part != part || axis_of(member.face) != axis || joint.members.size() < 2) continue;
            const JointMember& other = joint.members[i == 0 ? 1 : 0];
            std::string words = fmt::format("at its {} `{}`", face_name(member.face), piece[other.part].name);
            if (std::ranges::find(met, words) == met.end()) met.push_back(std::move(words));
        }
    }
    constexpr std::size_t most_named = 4;
    if (met.size() > most_named) met = {"everything that it meets there"};
    return all_of(met);
}

std::string consequence(const Piece& piece, PartId id, Axis axis, bool less) {
    const std::string met = met_along(piece, id, axis);
    if (met.empty()) return "";
    if (!less) return ", and does not go between what it meets: " + met;
    return (own_axis(piece[id], axis) == Axis::wide ? ": a gap at a shoulder; it meets "
                                                    : ": a gap, or a step; it meets ") +
           met;
}

void look_at(const Piece& piece, const MadeSize& made, Axis axis, Findings& findings) {
    const Rational& measured = *made.size[static_cast<std::size_t>(axis)];
    for (const PartId id : made.parts) {
        const Part& part = piece[id];
        const Rational drawn = part.body.size(axis);
        const Axis own = own_axis(part, axis);
        // What was marked from the work is right as it is.
        const bool marked = piece[part.kind].taken_over[static_cast<std::size_t>(own)].has_value();
        if (measured == drawn || marked) continue;
        const bool less = measured < drawn;
        const LengthStyle style = computed_style(piece.style);
        const std::size_t alike = static_cast<std::size_t>(std::ranges::count_if(
            made.parts, [&](PartId other) { return piece[other].body.size(axis) == drawn; }));
        findings.diagnostics.add(
            diagnose(Code::made_wrong, made.where,
                     fmt::format("`{}` is made {} too {}: {} {}, drawn {}{}{}", part.name,
                                 format_small(abs(Rational(measured - drawn)), style), amiss(own, less),
                                 axis_name(axis), format_length(measured, style), format_length(drawn, style),
                                 alike > 1 ? fmt::format(" (and {} more)", alike - 1) : std::string(),
                                 consequence(piece, id, axis, less)))
                .label(part.where, "drawn here")
                .hint(less ? "make it again, or change the design so that it fits: what is not cut yet "
                             "follows"
                           : "take it down to the drawing and then change its size in `made`, or change the "
                             "design"));
        return;
    }
}

}  // namespace

void check_made(const CheckInput& input, Findings& findings) {
    for (const MadeSize& made : input.piece.made) {
        for (const Axis axis : all_axes) {
            if (made.size[static_cast<std::size_t>(axis)]) look_at(input.piece, made, axis, findings);
        }
    }
}

}  // namespace rodwright
