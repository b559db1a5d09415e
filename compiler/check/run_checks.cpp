#include "compiler/check/run_checks.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/assembly/placed_meshes.hpp"
#include "compiler/at_once.hpp"
#include "compiler/check/check_table.hpp"
#include "compiler/limits.hpp"

namespace rodwright {

static Diagnostic too_many_parts(const Piece& piece) {
    return diagnose(
        Code::not_tried, piece.parts.front().where,
        fmt::format("whether the piece fits, goes together and stands was not tried: there are {} parts, and "
                    "{} is the most that are tried",
                    piece.parts.size(), limits::checked_parts));
}

Findings run_checks(const Piece& piece, SolidStore& solids) {
    return run_checks(piece, solids, assembly_facts(piece, solids));
}

Findings run_checks(const Piece& piece, SolidStore& solids, const std::optional<AssemblyFacts>& facts) {
    const bool too_many = piece.parts.size() > limits::checked_parts;
    const bool complete = !too_many && solids.placed().size() == piece.parts.size();
    const std::vector<Mesh> own = complete && !facts ? placed_meshes(piece, solids) : std::vector<Mesh>();
    const std::vector<Mesh>& meshes = facts ? facts->surfaces : own;
    const std::vector<SharedWood> shared = complete ? shared_wood(meshes, solids) : std::vector<SharedWood>();
    const CheckInput input{piece, solids, meshes, shared, facts ? &*facts : nullptr};
    const std::vector<Check>& checks = all_checks();
    std::vector<Findings> found(checks.size());
    at_once(checks.size(), [&](std::size_t i) {
        if (complete || !checks[i].needs_solids) checks[i].run(input, found[i]);
    });
    Findings all;
    if (too_many) all.diagnostics.add(too_many_parts(piece));
    for (Findings& each : found) {
        for (const Diagnostic& diagnostic : each.diagnostics.list()) all.diagnostics.add(diagnostic);
        std::ranges::move(each.numbers, std::back_inserter(all.numbers));
    }
    return all;
}

Findings judged(Findings findings, const Diagnostics& said, const Piece& piece) {
    Diagnostics all = said;
    for (const Diagnostic& each : findings.diagnostics.list()) all.add(each);
    findings.diagnostics = accepted(all, piece);
    return findings;
}

static std::vector<Span> places_of(const Diagnostic& diagnostic) {
    std::vector<Span> places = {diagnostic.primary};
    for (const Label& label : diagnostic.labels) places.push_back(label.span);
    return places;
}

static bool any_at(const std::vector<Span>& places, const Span& where) {
    return std::ranges::find(places, where) != places.end();
}

// Whether one of the places is a line that says how the part is joined, shaped, loaded or used.
static bool speaks_of(const Piece& piece, PartId part, const std::vector<Span>& places) {
    const Kind& kind = piece[piece[part].kind];
    const auto shown = [&](const auto& each) { return any_at(places, each.where); };
    const auto joined = [&](const Joint& joint) {
        return shown(joint) &&
               std::ranges::find(joint.members, part, &JointMember::part) != joint.members.end();
    };
    const auto used = [&](const Use& use) {
        return shown(use) && std::ranges::find(use.on, part) != use.on.end();
    };
    const auto loaded = [&](const Load& load) { return shown(load) && load.part == part; };
    return std::ranges::any_of(kind.features, shown) || std::ranges::any_of(kind.shapes, shown) ||
           std::ranges::any_of(piece.joints, joined) || std::ranges::any_of(piece.uses, used) ||
           std::ranges::any_of(piece.loads, loaded);
}

static bool fits(const Accept& accept, const Diagnostic& diagnostic, const Piece& piece) {
    if (accept.code != info(diagnostic.code).code) return false;
    if (accept.on.empty()) return true;
    const std::vector<Span> places = places_of(diagnostic);
    const bool shows_parts =
        std::ranges::any_of(piece.parts, [&](const Part& part) { return any_at(places, part.where); });
    return std::ranges::any_of(accept.on, [&](PartId part) {
        return shows_parts ? any_at(places, piece[part].where) : speaks_of(piece, part, places);
    });
}

Diagnostics accepted(const Diagnostics& found, const Piece& piece) {
    const std::vector<Accept>& accepts = piece.accepts;
    Diagnostics judged;
    std::vector<bool> used(accepts.size());
    for (Diagnostic diagnostic : found.list()) {
        const auto accept =
            std::ranges::find_if(accepts, [&](const Accept& each) { return fits(each, diagnostic, piece); });
        if (accept != accepts.end()) {
            diagnostic.accepted = accept->because;
            used[static_cast<std::size_t>(accept - accepts.begin())] = true;
        }
        judged.add(std::move(diagnostic));
    }
    for (std::size_t i = 0; i < accepts.size(); ++i) {
        if (used[i]) continue;
        judged.add(diagnose(Code::accepts_nothing, accepts[i].where,
                            fmt::format("nothing was found that `accept {}` accepts", accepts[i].code))
                       .hint("take the line out; `rodwright check` says what is found"));
    }
    return judged;
}

}  // namespace rodwright
