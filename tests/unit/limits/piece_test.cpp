// Limits of what a piece is made of, and of working it out.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/limits.hpp"
#include "tests/unit/limits/refused.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

std::string part(const std::string& head, const std::string& more = "") {
    return fmt::format("part {} {{ grain wide; {}\n{} }}\n", head, in_corner, more);
}

// Rows of 500 with their images both ways: 2000 parts each, in two lines each.
std::string rows(std::size_t count) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i) text += part(fmt::format("p{}[500], handed wide deep", i));
    return text;
}

// Assemblies in a line each, beginning in the third.
std::string placed(std::size_t count) {
    std::string text = "assembly frame() { }\n";
    for (std::size_t i = 0; i < count; ++i)
        text += fmt::format("place frame as frame{} {{ {} }}\n", i, in_corner);
    return text;
}

// Assemblies within one another in a line each, beginning in the second.
std::string within_one_another(std::size_t count) {
    std::string text;
    for (std::size_t i = 1; i < count; ++i)
        text += fmt::format("assembly a{}() {{ place a{} as a {{ {} }} }}\n", i, i + 1, in_corner);
    text += fmt::format("assembly a{}() {{ }}\n", count);
    return text + fmt::format("place a1 as a {{ {} }}\n", in_corner);
}

std::string fitted_row(const std::string& size) {
    return "part slat[fit] { grain deep; wide = " + size +
           "; front = piece.front; deep = 10mm; bottom = piece.bottom; tall = 10mm }\n"
           "space slat along wide from piece.left to piece.right { gap = 0.1mm; ends = 0mm }\n";
}

std::string steps_passed() {
    return fmt::format("with all its copies this design takes more than {} steps to evaluate",
                       limits::evaluating);
}

// `count` lines of three nodes each, in a block that is never entered.
std::string idle_lines(std::size_t count) {
    return "if 1 > 2 {\n" + repeated("let x = 1\n", count) + "}\n";
}

// A sum of that many faces.
std::string faces(std::size_t count) {
    return "p.left" + repeated(" + p.left", count - 1);
}

// As many lines as parts, each with the places of all of them, in factors of three digits without a pattern
// and a strong diagonal, so that there is one solution.
std::string dense_lines(int size) {
    std::string text = fmt::format(
        "part p[{}] {{ grain wide; wide = 10mm; front = piece.front; deep = 10mm; bottom = piece.bottom; "
        "tall "
        "= 10mm }}\n",
        size);
    for (int line = 1; line <= size; ++line) {
        for (int i = 1; i <= size; ++i) {
            const int factor =
                (line * line * 7 + line * i * 31 + i * i * i * 13) % 997 + (i == line ? 1000 * size : 1);
            text += fmt::format("{}{} * p[{}].left", i == 1 ? "" : " + ", factor, i);
        }
        text += fmt::format(" = {}mm\n", line);
    }
    return text;
}

}  // namespace

TEST_SUITE("unit/limits") {
    TEST_CASE("instances: parts of a piece") {
        constexpr std::size_t most_rows = limits::instances / 2000;
        CHECK(compile_body(rows(most_rows)).piece().parts.size() == limits::instances);
        // In the line after those rows, behind `part `.
        CHECK(passed_limit(compile_body(rows(most_rows) + part("one_more"))) ==
              fmt::format("{}:6 the piece would have more than {} parts", 2 + 2 * most_rows,
                          limits::instances));
    }

    TEST_CASE("assemblies: what a piece is put together from") {
        CHECK(compile_body(placed(limits::assemblies)).piece().assemblies.size() == limits::assemblies);
        CHECK(passed_limit(compile_body(placed(limits::assemblies + 1))) ==
              fmt::format("{}:1 the piece would have more than {} assemblies", limits::assemblies + 3,
                          limits::assemblies));
    }

    TEST_CASE("call_depth: assemblies within assemblies") {
        CHECK(compile_body(within_one_another(limits::call_depth)).report() == "");
        // The place that is one too deep stands in the assembly of that number.
        CHECK(passed_limit(compile_body(within_one_another(limits::call_depth + 1)))
                  .ends_with(
                      fmt::format(" assemblies within assemblies more than {} deep", limits::call_depth)));
        CHECK(passed_limit(compile_body("assembly a() { place a as b { " + in_corner +
                                        " } }\nplace a as b { " + in_corner + " }\n"))
                  .starts_with("2:16 assemblies within assemblies"));
    }

    TEST_CASE("row_count: parts of a row, written and fitted") {
        CHECK(compile_body(part(fmt::format("slat[{}]", limits::row_count))).piece().parts.size() ==
              limits::row_count);
        CHECK(passed_limit(compile_body(part(fmt::format("slat[{}]", limits::row_count + 1)))) ==
              fmt::format("2:10 a row of {} parts; at most {} can be made", limits::row_count + 1,
                          limits::row_count));
        // 1000 mm are filled by 2000 of 0.4 mm and their gaps, or by 5000 of 0.1 mm.
        CHECK(compile_body(fitted_row("0.4mm")).piece().parts.size() == 2000);
        CHECK(passed_limit(compile_body(fitted_row("0.1mm"))) ==
              fmt::format("3:1 more than {} parts would fit into this row", limits::row_count));
    }

    TEST_CASE("evaluating: bodies of assemblies, counted for every copy") {
        // 30'000 nodes that nothing comes of, within the assembly that is placed.
        const std::string idle = "assembly idle() { " + repeated("x = 1mm; ", 10'000) + "}";
        const auto copies = [&](std::size_t count) {
            std::string text = "assembly frame() { " + idle + " }\n";
            for (std::size_t i = 0; i < count; ++i)
                text += fmt::format("place frame as frame{} {{ {} }}\n", i, in_corner);
            return compile_body(text);
        };
        CHECK(copies(limits::evaluating / 40'000).report() == "");
        CHECK(passed_limit(copies(limits::evaluating / 30'000 + 1)).ends_with(steps_passed()));
    }

    TEST_CASE("evaluating: what is made and done, counted for every copy") {
        const auto lines = [&](const std::string& line, std::size_t count) {
            return compile_body(part("p[500], handed wide deep") + repeated(line, count));
        };
        // 2000 copies of the row.
        CHECK(lines("made p { }\n", 100).report() == "");
        CHECK(passed_limit(lines("made p { }\n", limits::evaluating / 2000)).ends_with(steps_passed()));
        CHECK(
            passed_limit(lines("done mill on p, p\n", limits::evaluating / 4000)).ends_with(steps_passed()));
    }

    TEST_CASE("evaluating: sums of faces, counted for every copy") {
        // The sums of 1, 2, ... 900 faces that it is made of have 405'000 terms.
        const std::string line =
            "require " + faces(900) + " >= 0mm\nleft + wide = " + faces(900) + " - 899 * p.left + wide";
        const auto copies = [&](std::size_t count) {
            return compile_body(part("p") +
                                fmt::format("part q[{}] {{ grain wide; wide = 10mm; front = "
                                            "piece.front; deep = 10mm; bottom = piece.bottom; tall "
                                            "= 10mm\n{} }}\n",
                                            count, line));
        };
        CHECK(copies(2).report() == "");
        CHECK(passed_limit(copies(limits::evaluating / 405'000 + 1)).ends_with(steps_passed()));
    }

    TEST_CASE("evaluating: joints and shapes, each time in another way") {
        const auto used = [](std::size_t times) {
            return compile_text(
                "shape idle(a: face) {\nk = 1mm\n" + idle_lines(10'000) +
                "}\npiece \"Sample\" { unit mm; wide = 1000mm; deep = 1000mm; tall = 1000mm\n" +
                part(fmt::format("p[{}]", times), "idle(k = index * 1mm) on top face") + "}\n");
        };
        CHECK(used(limits::evaluating / 60'000).report() == "");
        CHECK(passed_limit(used(limits::evaluating / 30'000 + 1)).ends_with(steps_passed()));
    }

    TEST_CASE("evaluating: texts that are filled in") {
        const std::string long_text(100'000, 'x');
        const auto filled = [&](std::size_t times) {
            return compile_text("shape told(a: face) {\nlet t = \"" + long_text + "\"\nstep cut a \"" +
                                repeated("{t}", times) +
                                "\"\n}\npiece \"Sample\" { unit mm; wide = 1000mm; deep = 1000mm; tall = "
                                "1000mm\n" +
                                part("p", "told() on top face") + "}\n");
        };
        CHECK(filled(10).report() == "");
        // Eight bytes are a step.
        CHECK(passed_limit(filled(limits::evaluating / 12'500 + 1)).ends_with(steps_passed()));
    }

    TEST_CASE("sum_terms: faces in one sum") {
        static_assert(limits::sum_terms == 2000);
        const auto with = [](const std::string& sum) {
            return compile_body(
                part("p") + "let s = " + faces(900) + "\npart q { grain wide; left = 0 * (" + sum +
                "); wide = 10mm; front = piece.front; deep = 10mm; bottom = piece.bottom; tall = "
                "10mm }\n");
        };
        CHECK(with("s + s").report() == "");
        CHECK(passed_limit(with("s + s + s")) == "5:34 this sum of faces and sizes is too large");
        CHECK(with("s + s + s")
                  .rendered()
                  .find(fmt::format("at most {} faces can be summed in one value", limits::sum_terms)) !=
              std::string::npos);
    }

    TEST_CASE("solving: lines that hang on one another") {
        CHECK(compile_body(dense_lines(12)).report() == "");
        const CompiledDesign dense = compile_body(dense_lines(120));
        CAPTURE(limits::solving);
        CHECK(passed_limit(dense) ==
              "1:7 the lines of this design hang on one another in too many ways to be solved");
        CHECK(dense.compilation().diagnostics.errors() == 1);
    }
}
