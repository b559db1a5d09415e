#include "compiler/check/run_checks.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/assembly/placed_meshes.hpp"
#include "compiler/at_once.hpp"
#include "compiler/check/check_table.hpp"

namespace rodwright {

Findings run_checks(const Piece& piece, SolidStore& solids) {
    const bool complete = solids.placed().size() == piece.parts.size();
    const std::vector<Mesh> meshes = complete ? placed_meshes(piece, solids) : std::vector<Mesh>();
    const std::vector<SharedWood> shared = complete ? shared_wood(meshes, solids) : std::vector<SharedWood>();
    const CheckInput input{piece, solids, meshes, shared};
    const std::vector<Check>& checks = all_checks();
    std::vector<Findings> found(checks.size());
    at_once(checks.size(), [&](std::size_t i) {
        if (complete || !checks[i].needs_solids) checks[i].run(input, found[i]);
    });
    Findings all;
    for (Findings& each : found) {
        for (const Diagnostic& diagnostic : each.diagnostics.list()) all.diagnostics.add(diagnostic);
        std::ranges::move(each.numbers, std::back_inserter(all.numbers));
    }
    return all;
}

Diagnostics accepted(const Diagnostics& found, const std::vector<Accept>& accepts) {
    Diagnostics judged;
    std::vector<bool> used(accepts.size());
    for (Diagnostic diagnostic : found.list()) {
        const std::string_view code = info(diagnostic.code).code;
        const auto accept = std::ranges::find(accepts, code, &Accept::code);
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
