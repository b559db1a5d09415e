// Limits of what strength is worked out for.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/check/strength/assess.hpp"
#include "compiler/limits.hpp"
#include "tests/support/design.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE("unit/limits") {
    TEST_CASE("frame_points: points of the frame that strength is worked out with") {
        constexpr std::size_t points_of_a_slat = 7;
        const auto said = [](std::size_t slats) {
            const CompiledDesign design = compile_text(fmt::format(
                "piece \"Floor\" {{ unit mm; wide = 800mm; deep = {0}mm; tall = 20mm\nwood oak = red_oak\n"
                "part slat[{1}] of oak {{ grain wide; left = piece.left; wide = 800mm; front = index * 10mm; "
                "deep = 8mm; bottom = piece.bottom; tall = 20mm }}\nload 1 N on slat[1].top at middle }}\n",
                10 * slats + 10, slats));
            Diagnostics diagnostics;
            strength::assess(design.piece(), {}, diagnostics);
            REQUIRE(diagnostics.list().size() == 1);
            return diagnostics.list().front().message;
        };
        constexpr std::size_t most = limits::frame_points / points_of_a_slat;
        CHECK(said(most).find("can move freely") != std::string::npos);
        CHECK(said(most + 1).find(fmt::format("{} points", limits::frame_points)) != std::string::npos);
    }
}
