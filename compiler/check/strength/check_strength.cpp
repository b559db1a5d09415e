#include "compiler/check/checks.hpp"
#include "compiler/check/strength/tell.hpp"

namespace rodwright {

void check_strength(const CheckInput& input, Findings& findings) {
    const auto made = strength::assess(input.piece, input.meshes, findings.diagnostics);
    if (!made) return;
    strength::tell_findings(input.piece, *made, findings.diagnostics);
    strength::tell_numbers(input.piece, *made, findings.numbers);
}

}  // namespace rodwright
