// Can the piece be put together? Groups of parts of which none can be brought in along a straight motion,
// with the joint's end that would free them if there is one.
#include <fmt/format.h>

#include <algorithm>

#include "compiler/assembly/locks.hpp"
#include "compiler/check/checks.hpp"
#include "compiler/limits.hpp"
#include "compiler/words.hpp"

namespace rodwright {

namespace {

constexpr std::size_t most_named = 6;

// The joint's end that would free all of them, and where it is written.
Diagnostic with_opening(Diagnostic finding, const Piece& piece, const Opening& opening) {
    const Joint& joint = piece.joints[opening.joint];
    const std::string work = plain_words(piece[joint.kind].work.definition);
    const std::string end(face_name(face_of(opening.way.axis, opening.way.positive)));
    finding.help =
        fmt::format("open the {} of `{}` in `{}` at its {} end, so that `{}` can slide out of it {}", work,
                    piece.parts[opening.goes].name, piece.parts[opening.stays].name, end,
                    piece.parts[opening.goes].name, direction_words(opening.way));
    return std::move(finding).label(joint.where, fmt::format("open at the {}, this would free them", end));
}

Diagnostic lock_finding(const Piece& piece, const Blocking& blocking, const PartNumbers& locked) {
    const auto name = [&](std::size_t part) { return piece.parts[part].name; };
    std::string names;
    for (std::size_t i = 0; i < std::min(locked.size(), most_named); ++i)
        names += fmt::format("{}`{}`", i == 0 ? "" : ", ", name(locked[i]));
    if (locked.size() > most_named) names += fmt::format(" and {} more", locked.size() - most_named);
    Diagnostic finding =
        diagnose(Code::locked, piece.parts[locked.front()].where,
                 "these parts lock each other, so that none can be brought in last: " + names);
    const std::vector<Opening> freeing = releases(blocking, locked, openings(piece));
    finding.notes.emplace_back("`rodwright check --picture FILE.svg` draws them");
    return freeing.empty() ? finding : with_opening(std::move(finding), piece, freeing.front());
}

}  // namespace

void check_assembly(const CheckInput& input, Findings& findings) {
    const std::vector<Part>& parts = input.piece.parts;
    if (parts.size() < 2) return;
    if (parts.size() > limits::tried_parts) {
        findings.diagnostics.add(
            diagnose(Code::not_tried, parts.front().where,
                     fmt::format("whether the parts go together was not tried: there are {}, and {} "
                                 "is the most that are tried",
                                 parts.size(), limits::tried_parts)));
        return;
    }
    if (input.facts == nullptr) return;
    for (const PartNumbers& lock : locks_of(*input.facts, input.shared))
        findings.diagnostics.add(lock_finding(input.piece, input.facts->blocking, lock));
}

}  // namespace rodwright
