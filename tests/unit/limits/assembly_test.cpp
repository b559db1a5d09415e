// Limits of what is tried of a piece's assembly.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/assembly/check_assembly.hpp"
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
            check_assembly(design.piece(), solids, diagnostics);
            return diagnostics.list();
        };
        CHECK(found(limits::tried_parts).empty());
        const std::vector<Diagnostic> more = found(limits::tried_parts + 1);
        REQUIRE(more.size() == 1);
        CHECK(more[0].code == Code::not_tried);
    }
}
