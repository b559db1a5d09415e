// Limits of texts and numbers.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/limits.hpp"
#include "tests/unit/limits/refused.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// A piece in lines of its own, and blank lines up to that many bytes.
CompiledDesign of_bytes(std::size_t bytes) {
    const std::string piece = "piece \"Sample\" { unit mm; wide = 1mm; deep = 1mm; tall = 1mm }\n";
    return compile_text(piece + std::string(bytes - piece.size(), '\n'));
}

// A piece that uses so many files, one in each line.
CompiledDesign using_files(std::size_t count) {
    Files files;
    std::string& main = files["main.rod"];
    for (std::size_t i = 1; i <= count; ++i) {
        const std::string name = fmt::format("file{}.rod", i);
        main += fmt::format("use \"{}\"\n", name);
        files[name] = "";
    }
    main += "piece \"Sample\" { unit mm; wide = 1mm; deep = 1mm; tall = 1mm }\n";
    return compile_files(files, "main.rod");
}

// `let x1 = x0` and so on, the last as a param.
std::string chain(std::size_t length) {
    std::string text = "let x0 = 5\n";
    for (std::size_t i = 1; i <= length; ++i) text += fmt::format("let x{} = x{}\n", i, i - 1);
    return text + fmt::format("param value = x{}\n", length);
}

// A number of `number_digits` digits, in the second line, squared in each line that follows.
std::string squared(std::size_t times) {
    std::string text = "let x0 = 1" + std::string(limits::number_digits - 1, '0') + "\n";
    for (std::size_t i = 1; i <= times; ++i) text += fmt::format("let x{0} = x{1} * x{1}\n", i, i - 1);
    return text;
}

}  // namespace

TEST_SUITE("unit/limits") {
    TEST_CASE("file_bytes: a design file") {
        CHECK(of_bytes(limits::file_bytes).report() == "");
        CHECK(passed_limit(of_bytes(limits::file_bytes + 1)) ==
              fmt::format("1:1 the file has {} bytes; a design file may have {}", limits::file_bytes + 1,
                          limits::file_bytes));
    }

    TEST_CASE("file_bytes: all files of a design together") {
        const auto two = [](std::size_t bytes) {
            const std::string main =
                "use \"a.rod\"\npiece \"A\" { unit mm; wide = 1mm; deep = 1mm; tall = 1mm }\n";
            return compile_files({{"main.rod", main}, {"a.rod", std::string(bytes - main.size(), '\n')}},
                                 "main.rod");
        };
        CHECK(two(limits::file_bytes).report() == "");
        CHECK(
            passed_limit(two(limits::file_bytes + 1)) ==
            fmt::format("1:5 the files of this design have more than {} bytes together", limits::file_bytes));
    }

    TEST_CASE("files: what one design reads") {
        // The file that is built is one of them.
        CHECK(using_files(limits::files - 1).report() == "");
        CHECK(passed_limit(using_files(limits::files)) ==
              fmt::format("{}:5 the design uses more than {} files", limits::files, limits::files));
    }

    TEST_CASE("nesting: brackets within one another") {
        const auto nested = [](std::size_t count) {
            return compile_body("param value = " + repeated("(", count) + "1" + repeated(")", count));
        };
        // The piece's own braces are one.
        CHECK(nested(limits::nesting - 3).param("value").value == 1);
        const std::string text = passed_limit(nested(limits::nesting + 1));
        CHECK(text.starts_with("2:"));
        CHECK(text.ends_with(
            fmt::format(" more than {} brackets and blocks stand within one another", limits::nesting)));
    }

    TEST_CASE("tree_depth: terms of one sum, and definitions that use definitions") {
        const auto sum = [](std::size_t more) {
            return compile_body("param value = 1" + repeated(" + 1", more));
        };
        CHECK(sum(limits::tree_depth - 10).param("value").value == limits::tree_depth - 9);
        CHECK(passed_limit(sum(limits::tree_depth)) ==
              fmt::format("2:15 more than {} operations hang on one another", limits::tree_depth));
        CHECK(compile_body(chain(limits::tree_depth - 10)).param("value").value == 5);
        const std::string text = passed_limit(compile_body(chain(limits::tree_depth)));
        CHECK(text.ends_with(
            fmt::format(" definitions depend on each other more than {} deep", limits::tree_depth)));
    }

    TEST_CASE("number_digits: one written number") {
        const std::string most(limits::number_digits, '7');
        CHECK(compile_body("param value = " + most).param("value").value == Rational(most));
        CHECK(passed_limit(compile_body("param value = 7" + most)) ==
              fmt::format("2:15 a number has more than {} digits", limits::number_digits));
    }

    TEST_CASE("value_bits: what comes of numbers") {
        // 10^39 has 130 bits, its sixteenth power 2073, its thirty-second 4146.
        static_assert(limits::value_bits == 4096);
        CHECK(compile_body(squared(4)).report() == "");
        const CompiledDesign large = compile_body(squared(5));
        CHECK(first_of(Code::impossible_arithmetic, large.compilation().diagnostics,
                       *large.compilation().sources) == "7:10 the result is too large to hold");
    }

    TEST_CASE("diagnostics: what is kept of a run") {
        std::string body;
        for (std::size_t i = 0; i < limits::diagnostics + 50; ++i)
            body += fmt::format("param x{0} = y{0}\n", i);
        const CompiledDesign design = compile_body(body);
        const Diagnostics& all = design.compilation().diagnostics;
        CHECK(all.list().size() == limits::diagnostics);
        CHECK(all.errors() == limits::diagnostics + 50);
        CHECK(all.more() == 50);
        CHECK(all.full());
    }
}
