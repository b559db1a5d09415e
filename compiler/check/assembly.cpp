// Can the piece be put together? Groups of parts of which none can be brought in along a straight motion,
// with the joint's end that would free them if there is one.
#include <fmt/format.h>

#include <algorithm>

#include "compiler/assembly/assembly_facts.hpp"
#include "compiler/assembly/locks.hpp"
#include "compiler/check/checks.hpp"
#include "compiler/limits.hpp"

namespace rodwright {

namespace {

constexpr std::size_t most_named = 6;

// What is in one another cannot be parted, and is reported as that.
bool shares_wood(const PartNumbers& locked, const std::vector<SharedWood>& shared) {
    return std::ranges::any_of(shared, [&](const SharedWood& pair) {
        return std::ranges::binary_search(locked, pair.a) && std::ranges::binary_search(locked, pair.b);
    });
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
    if (!freeing.empty()) {
        const Opening& opening = freeing.front();
        finding.help = fmt::format("it would go together if `{}` could slide out of `{}` {}",
                                   name(opening.goes), name(opening.stays), direction_words(opening.way));
    }
    return finding;
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
    const Blocking& blocking = input.facts->blocking;
    for (const PartNumbers& locked : input.facts->apart.locked) {
        if (!shares_wood(locked, input.shared))
            findings.diagnostics.add(lock_finding(input.piece, blocking, smallest_lock(blocking, locked)));
    }
}

}  // namespace rodwright
