// What wood itself does not forgive: grain that runs out or the short way, glue on end grain, dust.
#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>

#include "compiler/check/check_data.hpp"
#include "compiler/check/checks.hpp"
#include "compiler/check/wood/grain.hpp"
#include "compiler/check/words.hpp"

namespace rodwright {

namespace {

const Wood* solid_wood(const Piece& piece, const Kind& kind) {
    const Wood* wood = piece.find_wood(kind.wood);
    return wood != nullptr && wood->sheet ? nullptr : wood;
}

bool is_sheet(const Piece& piece, const Kind& kind) {
    const Wood* wood = piece.find_wood(kind.wood);
    return wood != nullptr && wood->sheet;
}

void check_short_way(const Piece& piece, const Kind& kind, Findings& findings) {
    const Rational& along = kind.size[Axis::wide];
    const Rational& across = kind.size[Axis::deep];
    if (kind.glued || across.get_d() < check_data().wood.short_way * along.get_d()) return;
    findings.diagnostics.add(
        diagnose(Code::short_grain, kind.where,
                 fmt::format("the grain of `{}` runs the short way: {} along it, {} across it", kind.name,
                             about(along.get_d(), piece.style), about(across.get_d(), piece.style)))
            .hint("let `grain` name the longer way"));
}

bool is_shaped(const Kind& kind) {
    return std::ranges::any_of(kind.features, [](const Feature& each) { return each.op == FeatureOp::trim; });
}

struct RunOut {
    Axis across{};
    StraightGrain grain;
};

// The direction in which fewer fibres run through.
RunOut worst_run_out(const CheckInput& input, const Kind& kind) {
    const auto first = static_cast<std::size_t>(kind.parts.front());
    const Part& part = input.piece.parts[first];
    const Axis grain = part.placement.turn.apply(Direction{Axis::wide, true}).axis;
    std::optional<RunOut> worst;
    for (const Axis across : all_axes) {
        if (across == grain) continue;
        const RunOut found{across,
                           straight_grain(input.meshes[first], grain, across, part.body.low[grain].get_d(),
                                          part.body.high[grain].get_d())};
        if (!worst || found.grain.share() < worst->grain.share()) worst = found;
    }
    return *worst;
}

void check_run_out(const CheckInput& input, const Kind& kind, Findings& findings) {
    if (!is_shaped(kind) || kind.mirror_of) return;
    const RunOut worst = worst_run_out(input, kind);
    const double through = std::max(0.0, worst.grain.through);
    Number number;
    number.check = "wood";
    number.title = fmt::format("{}: fibres that run through {}", kind.name, along_words(worst.across));
    number.value = computed_length(through);
    number.limit = computed_length(check_data().wood.run_out * worst.grain.narrowest);
    number.formula = "what all sections along the part have in common, against half of the narrowest";
    number.inputs = {{"narrowest section", computed_length(worst.grain.narrowest)}};
    number.source = "the limit is common practice, no source";
    findings.numbers.push_back(std::move(number));
    if (worst.grain.share() >= check_data().wood.run_out) return;
    findings.diagnostics.add(
        diagnose(Code::runs_out, kind.where,
                 fmt::format("the grain of `{}` runs out: {} of its narrowest {} run through from end to end",
                             kind.name, about(through, input.piece.style),
                             about(worst.grain.narrowest, input.piece.style)))
            .hint("make the curve or the taper flatter, or the part thicker; wood whose grain follows the "
                  "curve "
                  "holds, and is accepted with that reason"));
}

// What one leaves in the other, bores for pegs, or takes screws for.
bool lets_something_in(const Piece& piece, const Joint& joint, JointKindId id) {
    if (!piece[id].work.supplies.empty()) return true;
    return std::ranges::any_of(joint.members, [&](const JointMember& member) {
        const std::vector<Feature>& features = piece[piece[member.part].kind].features;
        return std::ranges::any_of(features, [&](const Feature& each) { return each.joint == id; });
    });
}

void check_end_grain(const Piece& piece, Findings& findings) {
    for (const Joint& joint : piece.joints) {
        const JointKind& kind = piece[joint.kind];
        const auto end = std::ranges::find(joint.members, MemberForm::end, &JointMember::form);
        if (kind.glue.empty() || end == joint.members.end() || lets_something_in(piece, joint, joint.kind))
            continue;
        if (is_sheet(piece, piece[piece[end->part].kind])) continue;
        findings.diagnostics.add(
            diagnose(Code::end_grain_glue, joint.where,
                     fmt::format("`{}` glues the end grain of `{}` with nothing let in", kind.work.definition,
                                 piece[end->part].name))
                .hint("end grain drinks the glue: let in a tenon, a tongue or dowels, or screw it"));
    }
}

void check_dust(const Piece& piece, Findings& findings) {
    std::set<std::string> used;
    for (const Kind& kind : piece.kinds) {
        const Wood* wood = solid_wood(piece, kind);
        if (wood == nullptr || wood->caution.empty() || !used.insert(wood->species).second) continue;
        findings.diagnostics.add(
            diagnose(Code::mind_the_dust, kind.where, fmt::format("{}: {}", wood->common, wood->caution))
                .hint("draw the dust off where it is made, and wear a mask"));
    }
}

}  // namespace

void check_wood(const CheckInput& input, Findings& findings) {
    const Piece& piece = input.piece;
    for (const Kind& kind : piece.kinds) {
        if (is_sheet(piece, kind)) continue;
        check_short_way(piece, kind, findings);
        check_run_out(input, kind, findings);
    }
    check_end_grain(piece, findings);
    check_dust(piece, findings);
}

}  // namespace rodwright
