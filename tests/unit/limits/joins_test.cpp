// Limits of joints and of what they cut.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/evaluate/design.hpp"
#include "compiler/graph/draft.hpp"
#include "compiler/limits.hpp"
#include "tests/unit/limits/refused.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// A row `a` at the bottom of the piece and a row `b` upwards from it, of which the first touches all of `a`.
// The joins stand in the fifth line.
CompiledDesign two_rows(const std::string& joint, std::size_t a, std::size_t b, const std::string& joins) {
    return compile_text(joint +
                        "\npiece \"Sample\" { unit mm; wide = 1000mm; deep = 1000mm; tall = 1000mm\n" +
                        fmt::format("part a[{}] {{ grain wide; {} }}\n", a, in_corner) +
                        fmt::format("part b[{}] {{ grain wide; left = piece.left; wide = 10mm; front = "
                                    "piece.front; deep = 10mm; bottom = index * 10mm; tall = 10mm }}\n",
                                    b) +
                        joins + "}\n");
}

const std::string idle_joint = "joint idle(a: face, b: face) { }";

std::string many_cuts(const std::string& count) {
    return "joint many(a: face, b: face) { remove a box(1mm, 1mm, 1mm) repeat " + count +
           " every 1mm along widthwise }";
}

}  // namespace

TEST_SUITE("unit/limits") {
    TEST_CASE("trials: pairs of parts that might meet") {
        static_assert(limits::trials >= limits::row_count * limits::row_count);
        static_assert(limits::trials < 2 * limits::row_count * limits::row_count);
        const std::string join = "fasten a.top to b with idle\n";
        const auto rows = [&](const std::string& joins) {
            return two_rows(idle_joint, limits::row_count, limits::row_count, joins);
        };
        CHECK(rows(join).piece().joints.size() == limits::row_count);
        CHECK(passed_limit(rows(join + join)) ==
              fmt::format("6:1 the piece has more than {} pairs of parts that might meet in a join",
                          limits::trials));
    }

    TEST_CASE("joints: of a piece") {
        Diagnostics diagnostics;
        SourceManager sources;
        const MemoryWorld world;
        Design design(world, LibraryFiles(world, std::nullopt), sources, diagnostics);
        const FileId file = sources.add("design.rod", "\nfasten a to b with idle\n");
        Evaluator evaluator(diagnostics, {});
        const Statements statements;
        const Places places;
        Draft draft{.statements = statements, .places = places, .design = design, .evaluator = evaluator};
        for (std::size_t i = 0; i < limits::joints; ++i) REQUIRE(count_joint(draft, {file, 1, 24}));
        CHECK(diagnostics.ok());
        CHECK_FALSE(count_joint(draft, {file, 1, 24}));
        CHECK_FALSE(count_joint(draft, {file, 1, 24}));
        CHECK(diagnostics.errors() == 1);
        CHECK(first_of(Code::too_large, diagnostics, sources) ==
              fmt::format("2:1 the piece has more than {} joints", limits::joints));
    }

    TEST_CASE("features: cuts of all parts") {
        // A thousand for every copy of `a`.
        const auto rows = [](std::size_t copies) {
            return two_rows(many_cuts("1000"), copies, 1, "fasten a.top to b with many\n");
        };
        CHECK(rows(10).report() == "");
        CHECK(passed_limit(rows(limits::features / 1000 + 1)) ==
              fmt::format("5:24 the piece has more than {} cuts, tongues and corners of them",
                          limits::features));
    }

    TEST_CASE("repeats: copies of one body") {
        const auto rows = [](std::size_t count) {
            return two_rows(many_cuts(std::to_string(count)), 1, 1, "fasten a.top to b with many\n");
        };
        CHECK(rows(limits::repeats).kind("a[1]").features.size() == limits::repeats);
        const CompiledDesign more = rows(limits::repeats + 1);
        CHECK(first_of(Code::bad_argument, more.compilation().diagnostics, *more.compilation().sources) ==
              fmt::format("1:67 expected a whole number from 1 to {}", limits::repeats));
    }
}
