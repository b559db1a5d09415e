// The blank or panel of a part of a compiled design.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "compiler/stock/rough/rough.hpp"
#include "tests/support/design.hpp"

namespace rodwright::testing {

inline const Blank& blank_of(const RoughSizes& sizes, const CompiledDesign& design, const std::string& part) {
    const KindId kind = design.part(part).kind;
    const auto holds = [&](const Blank& blank) { return std::ranges::count(blank.kinds, kind) > 0; };
    const auto found = std::ranges::find_if(sizes.blanks, holds);
    REQUIRE_MESSAGE(found != sizes.blanks.end(), "no blank for " << part);
    return *found;
}

inline const PanelNeed& panel_of(const RoughSizes& sizes, const CompiledDesign& design,
                                 const std::string& part) {
    const auto found = std::ranges::find(sizes.panels, design.part(part).kind, &PanelNeed::kind);
    REQUIRE_MESSAGE(found != sizes.panels.end(), "no panel for " << part);
    return *found;
}

}  // namespace rodwright::testing
