#include "compiler/check/strength/assess.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/limits.hpp"

namespace rodwright::strength {

namespace {

void report_fault(const Piece& piece, const frame::Fault& fault, Diagnostics& diagnostics) {
    const auto part = std::ranges::find(piece.parts, fault.name, &Part::name);
    const Span where = part == piece.parts.end() ? Span{} : part->where;
    if (fault.kind == frame::Fault::Kind::mechanism) {
        diagnostics.add(
            diagnose(Code::strength_unknown, where,
                     fmt::format("`{}` can move freely: nothing holds it some way", fault.name))
                .hint("join it, or brace what it hangs on; strength is worked out once nothing moves"));
    } else {
        diagnostics.add(
            diagnose(Code::strength_unknown, where,
                     fmt::format("`{}` cannot be taken for a beam: it has no section", fault.name))
                .hint("look at the shapes and joints that cut it"));
    }
}

// Whether all that carries a load hangs on something; reports the first that does not.
bool carriers_stand(const Piece& piece, const Structure& structure, const std::vector<Case>& cases,
                    Diagnostics& diagnostics) {
    for (const Case& each : cases) {
        for (const PartId part : each.carriers) {
            if (structure.parts[static_cast<std::size_t>(part)]) continue;
            diagnostics.add(
                diagnose(Code::strength_unknown, each.where,
                         fmt::format("`{}` carries a load, and no joint connects it with the floor",
                                     piece[part].name))
                    .hint("join it to what it stands on"));
            return false;
        }
    }
    return true;
}

}  // namespace

std::optional<Assessment> assess(const Piece& piece, const std::vector<Mesh>& meshes,
                                 Diagnostics& diagnostics) {
    const StrengthData& data = strength_data();
    Assessment made;
    made.cases = load_cases(piece, data, diagnostics);
    if (made.cases.empty()) return std::nullopt;
    std::vector<PartPoint> loaded;
    for (const Case& each : made.cases) {
        for (const PointForce& force : each.forces) loaded.push_back(force.on);
    }
    Sections sections(piece, meshes);
    std::string unknown;
    std::optional<Structure> structure = build_structure(piece, sections, data.rules, loaded, unknown);
    if (!structure) {
        diagnostics.add(diagnose(Code::strength_unknown, made.cases.front().where,
                                 fmt::format("the wood of `{}` has no known strength", unknown))
                            .hint("name its wood: `wood ash = white_ash`, `part leg of ash`"));
        return std::nullopt;
    }
    made.structure = std::move(*structure);
    if (made.structure.model.nodes.size() > limits::frame_points) {
        diagnostics.add(
            diagnose(Code::strength_unknown, made.cases.front().where,
                     fmt::format("strength is worked out with {} points where beams meet; this piece has {}",
                                 limits::frame_points, made.structure.model.nodes.size()))
                .hint("check the pieces within the piece by themselves, each in a file of its own"));
        return std::nullopt;
    }
    if (!carriers_stand(piece, made.structure, made.cases, diagnostics)) return std::nullopt;
    Judge judge(piece, made.structure, sections, data.rules);
    for (std::size_t i = 0; i < made.cases.size(); ++i) {
        frame::Fault fault;
        const std::optional<CaseResult> result = solve_case(made.structure, made.cases[i], fault);
        if (!result) {
            report_fault(piece, fault, diagnostics);
            return std::nullopt;
        }
        made.settled = made.settled && result->settled;
        judge.add(i, made.cases[i], *result);
    }
    made.verdict = judge.take();
    return made;
}

}  // namespace rodwright::strength
