// Limits of what is tried of a piece's assembly.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "compiler/check/run_checks.hpp"
#include "compiler/limits.hpp"
#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE("unit/limits") {
    TEST_CASE("tried_parts: parts that are tried whether they go together") {
        const auto found = [](std::size_t slats) {
            const CompiledDesign design = compile_text(fmt::format(
                "piece \"Screen\" {{ unit mm; wide = 800mm; deep = 20mm; tall = {0}mm\n"
                "part slat[{1}] {{ grain wide; left = piece.left; wide = 800mm; front = piece.front; "
                "deep = 20mm; bottom = index * 10mm; tall = 10mm }}\n}}\n",
                10 * slats + 10, slats));
            Diagnostics diagnostics;
            SolidStore solids(design.piece(), diagnostics);
            const Findings findings = run_checks(design.piece(), solids);
            return std::ranges::count(findings.diagnostics.list(), Code::not_tried, &Diagnostic::code);
        };
        CHECK(found(limits::tried_parts) == 0);
        CHECK(found(limits::tried_parts + 1) == 1);
    }
}
