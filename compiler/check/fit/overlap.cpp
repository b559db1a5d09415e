#include <fmt/format.h>

#include "compiler/check/checks.hpp"

namespace rodwright {

static std::string volume_words(double volume, LengthUnit unit) {
    const bool inch = unit == LengthUnit::inch;
    return fmt::format("{:.2g} {}", volume / (inch ? 25.4 * 25.4 * 25.4 : 1000),
                       inch ? "cubic inches" : "cm\u00b3");
}

void check_overlap(const CheckInput& input, Findings& findings) {
    for (const SharedWood& pair : input.shared) {
        const Part& a = input.piece.parts[pair.a];
        const Part& b = input.piece.parts[pair.b];
        findings.diagnostics.add(
            diagnose(Code::run_into, b.where,
                     fmt::format("`{}` and `{}` run into each other: they share {} of wood", a.name, b.name,
                                 volume_words(pair.volume, input.piece.style.unit)))
                .label(a.where, "with this part")
                .hint("join them, or change a size or a place so that they only touch"));
    }
}

}  // namespace rodwright
