#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "compiler/check/strength/tell.hpp"

namespace rodwright::strength {

namespace {

// The worst for each key, in the order in which keys first come up.
template <typename Result, typename Key, typename Badness>
std::vector<Result> worst_by(const std::vector<Result>& all, Key key, Badness badness) {
    std::vector<Result> worst;
    std::map<decltype(key(all.front())), std::size_t> place;
    for (const Result& each : all) {
        const auto [found, added] = place.emplace(key(each), worst.size());
        if (added) {
            worst.push_back(each);
        } else if (badness(each) > badness(worst[found->second])) {
            worst[found->second] = each;
        }
    }
    return worst;
}

// Beyond this a share is more than whole, also when it is rounded.
constexpr double more_than_whole = 1.005;

std::string percent(double share) {
    return fmt::format("{:.0f} %", 100 * share);
}

Diagnostic finding(Code code, Span where, std::string message, const Case& loads, std::string help) {
    return diagnose(code, where, std::move(message))
        .label(loads.where, "with this load")
        .note(disclaimer)
        .hint(std::move(help));
}

std::string rounded(double millimetres, const LengthStyle& style) {
    LengthStyle fine = style;
    fine.step = style.unit == LengthUnit::inch ? ratio(1, 64) : ratio(1, 10);
    return show_length(Rational(millimetres), fine).text;
}

}  // namespace

std::vector<PartResult> worst_parts(const Piece& piece, const Verdict& verdict) {
    std::vector<PartResult> loaded;
    for (const PartResult& each : verdict.parts) {
        if (each.allowed > 0) loaded.push_back(each);
    }
    return worst_by(
        loaded, [&](const PartResult& each) { return piece[each.part].declared; },
        [](const PartResult& each) { return each.use(); });
}

std::vector<JointResult> worst_joints(const Piece& piece, const Verdict& verdict) {
    std::vector<JointResult> judged;
    for (const JointResult& each : verdict.joints) {
        if (each.use > 0) judged.push_back(each);
    }
    return worst_by(
        judged, [&](const JointResult& each) { return piece.joints[each.joint].kind; },
        [](const JointResult& each) { return each.use; });
}

std::vector<ColumnResult> worst_columns(const Piece& piece, const Verdict& verdict) {
    return worst_by(
        verdict.columns, [&](const ColumnResult& each) { return piece[each.part].declared; },
        [](const ColumnResult& each) { return each.use(); });
}

std::vector<Sag> worst_sags(const Piece& piece, const Verdict& verdict) {
    return worst_by(
        verdict.sags, [&](const Sag& each) { return piece[each.part].declared; },
        [](const Sag& each) { return each.sag / each.span; });
}

std::string joint_words(const Piece& piece, std::size_t joint) {
    const Joint& graph = piece.joints[joint];
    std::string name = piece[graph.kind].work.definition;
    std::ranges::replace(name, '_', ' ');
    return fmt::format("`{}` and `{}` ({})", piece[graph.members[0].part].name,
                       piece[graph.members[1].part].name, name);
}

void tell_findings(const Piece& piece, const Assessment& made, Diagnostics& diagnostics) {
    const Rules& rules = strength_data().rules;
    for (const PartResult& each : worst_parts(piece, made.verdict)) {
        if (each.use() <= more_than_whole) continue;
        diagnostics.add(
            finding(Code::part_overloaded, piece[each.part].where,
                    fmt::format("`{}` bends with {} of the stress that it may carry, {} from its end",
                                piece[each.part].name, percent(each.use()), rounded(each.at, piece.style)),
                    made.cases[each.in_case],
                    "make it deeper or thicker, shorten its span, or put something under it"));
    }
    for (const ColumnResult& each : worst_columns(piece, made.verdict)) {
        if (each.use() <= more_than_whole) continue;
        diagnostics.add(
            finding(Code::part_overloaded, piece[each.part].where,
                    fmt::format("`{}` is pressed along its grain with {} of what it may carry before it "
                                "crushes or buckles; it is {:.0f} times as long as its section is stiff",
                                piece[each.part].name, percent(each.use()), each.slenderness),
                    made.cases[each.in_case], "make it thicker where it is thinnest, or brace it"));
    }
    for (const JointResult& each : worst_joints(piece, made.verdict)) {
        if (each.use <= more_than_whole) continue;
        diagnostics.add(
            finding(Code::joint_overloaded, piece.joints[each.joint].where,
                    fmt::format("the joint of {} has {} of the load that it may carry: {}",
                                joint_words(piece, each.joint), percent(each.use), each.mode),
                    made.cases[each.in_case],
                    "give it more of what holds it, or brace the piece so that it has less to do"));
    }
    for (const Sag& each : worst_sags(piece, made.verdict)) {
        if (each.sag <= each.span / rules.sag_span) continue;
        diagnostics.add(finding(Code::sags, piece[each.part].where,
                                fmt::format("`{}` sags {} in {}{}; more than {} shows", piece[each.part].name,
                                            rounded(each.sag, piece.style), rounded(each.span, piece.style),
                                            made.cases[each.in_case].lasting ? " over the years" : "",
                                            rounded(each.span / rules.sag_span, piece.style)),
                                made.cases[each.in_case], "make it thicker, or its span shorter"));
    }
    for (const Sway& each : made.verdict.sways) {
        if (each.sway <= each.height / rules.sway_height) continue;
        const Case& loads = made.cases[each.in_case];
        diagnostics.add(
            diagnose(Code::sways, loads.where,
                     fmt::format("pushed at a height of {}, the piece gives way by {}",
                                 rounded(each.height, piece.style), rounded(each.sway, piece.style)))
                .note(disclaimer)
                .hint("deeper aprons, longer tenons, a lower rail, a back or a brace make it stiffer"));
    }
}

}  // namespace rodwright::strength
