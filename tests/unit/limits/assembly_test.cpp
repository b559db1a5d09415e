// Limits of what is tried of a piece's assembly.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "compiler/check/movement/held_spans.hpp"
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

    TEST_CASE("checked_parts: parts whose solids are checked") {
        const auto found = [](std::size_t slats) {
            const CompiledDesign design = compile_text(fmt::format(
                "piece \"Stack\" {{ unit mm; wide = 800mm; deep = 800mm; tall = 90m\n"
                "part low[{0}] {{ grain wide; left = piece.left; wide = 800mm; front = piece.front; "
                "deep = 200mm; bottom = index * 30mm; tall = 10mm }}\n"
                "part high[{1}] {{ grain wide; left = piece.left; wide = 800mm; front = piece.front + 400mm; "
                "deep = 200mm; bottom = index * 30mm; tall = 10mm }}\n}}\n",
                slats / 2, slats - slats / 2));
            Diagnostics diagnostics;
            SolidStore solids(design.piece(), diagnostics);
            return run_checks(design.piece(), solids).diagnostics.list();
        };
        const auto any_loose = [](const std::vector<Diagnostic>& list) {
            return std::ranges::count(list, Code::loose_part, &Diagnostic::code) > 0;
        };
        CHECK(any_loose(found(limits::checked_parts)));
        const std::vector<Diagnostic> more = found(limits::checked_parts + 1);
        CHECK_FALSE(any_loose(more));
        CHECK(std::ranges::count(more, Code::not_tried, &Diagnostic::code) >= 1);
    }

    TEST_CASE("held_steps: steps from what holds a part to what holds that") {
        const auto found = [](std::size_t joins) {
            std::string text =
                "joint pinned(a: part, b: part) { slides along inward; glue faces }\n"
                "piece \"Board\" { unit mm; wide = 800mm; deep = 300mm; tall = 40mm\nwood oak = red_oak "
                "flat\n"
                "part board of oak { grain wide; left = piece.left; wide = 800mm; front = piece.front; deep "
                "= 300mm; "
                "bottom = batten.top; tall = 20mm }\n"
                "part batten of oak { grain deep; left = piece.left; wide = 40mm; front = piece.front; deep "
                "= 300mm; "
                "bottom = piece.bottom; tall = 20mm }\n";
            for (std::size_t i = 0; i < joins; ++i) text += "join batten.top to board with pinned\n";
            const CompiledDesign design = compile_text(text + "}\n");
            return held_spans(design.piece(), {8, 6, 12});
        };
        // From each of the places where the board is held all others are reached: the steps grow with their
        // square.
        const auto root = static_cast<std::size_t>(std::sqrt(static_cast<double>(limits::held_steps)));
        CHECK_FALSE(found(root / 8).left_from);
        CHECK(found(root / 2).left_from == 1);
    }
}
