#include <doctest/doctest.h>

#include "compiler/limits.hpp"
#include "rod_text.hpp"

namespace rodwright {
namespace {

struct Row {
    const char* text;
    const char* report;
};

const Row rows[] = {
    {"part leg of ash", "1:16-0 E0101 expected `{` after `ash`"},
    {"part leg x {}", "1:9-0 E0101 expected `{` after the part's name, not `x`"},
    {"part leg\n{ }",
     "1:9-0 E0101 expected `{` on the line that it belongs to | help: move the `{` to the end of this line"},
    {"part if {}", "1:6-2 E0101 `if` is a word of the language, not a name | help: choose another name"},
    {"x =", "1:4-0 E0101 expected a value after `=`"},
    {"x = )", "1:4-0 E0101 expected a value after `=`, not `)`"},
    {"x = leg.", "1:9-0 E0101 expected a face or size after `leg.`"},
    {"x = a + leg[left].(3)", "1:19-0 E0101 expected a face or size after `leg[left].`, not `(`"},
    {"x = (3 + 4\n", "1:11-0 E0101 expected `)` after `4` | 1:5 this `(` is not closed"},
    {"x = leg[left\ny = 3", "1:13-0 E0101 expected `]` after `left` | 1:8 this `[` is not closed"},
    {"part a {\n  x = 3\n",
     "2:8-0 E0101 expected `}` before the end of the file | 1:8 this `{` is not closed"},
    {"piece \"p\" {\n  part a {\n    x = 3\n}\n",
     "4:2-0 E0101 expected `}` before the end of the file | 2:10 this `{` is not closed"},
    {"part a { }\n}\n",
     "2:1-1 E0101 this `}` closes nothing | help: take it out, or write the `{` that it closes"},
    {"part a {\n  piece \"b\" { }\n}",
     "2:3-5 E0101 a piece cannot stand within a block | help: close the block with `}` before it"},
    {"let x 3", "1:6-0 E0101 expected `=` after `x`, not `3`"},
    {"grain long", "1:6-0 E0101 expected `wide`, `deep` or `tall` after `grain`, not `long`"},
    {"x = 3 y = 4", "1:6-0 E0101 expected a line end or `;` after `3`, not `y`"},
    {"a < b < c = d", "1:6-0 E0101 expected `=` after `b`, not `<`"},
    {"join a b with c", "1:7-0 E0101 expected `to` after `a`, not `b`"},
    {"require a > 3 'no'", "1:14-0 E0101 expected a line end or `;` after `3`, not `'`"},
    {"check a else maybe \"b\"", "1:13-0 E0101 expected `warn` or `error` after `else`, not `maybe`"},
    {"step cut { a = 1 b = 2 }", "1:17-0 E0101 expected `,` after `1`, not `b`"},
    {"\"no end\n", "1:8-0 E0101 expected `\"` at the end of the text"},
    {"x = 3,5mm", "1:6-1 E0106 a comma stands in a number | help: write `3.5mm` with a point"},
    {"x = 3inch", "1:6-4 E0106 `inch` is not a unit | help: write `in`"},
    {"x = 3 feet", "1:7-4 E0106 `feet` is not a unit | help: write `ft`"},
    {"x = 5-3",
     "1:5-3 E0106 `5-3` could be a difference or a mixed number | help: write `5 - 3` for the difference; a "
     "mixed number is `1-5/8`"},
    {"x = 4 5/8\"",
     "1:5-6 E0106 two numbers stand side by side | help: write `4-5/8\"` for a whole number and a fraction, "
     "`4 + 5/8\"` for a sum"},
    {"x = 3  mm",
     "1:6-2 E0106 a number and its unit stand too far apart | help: write one blank between them, or none"},
    {"x = 1_000",
     "1:6-4 E0106 `_000` cannot stand in a number | help: a number is written `3`, `3/4`, `1-5/8` or `0.75`, "
     "and its unit follows"},
    {"wide == leg", "1:6-2 E0101 `==` compares; an equation has one `=` | help: write `=`"},
    {"let a == 3", "1:7-2 E0101 `==` compares; an equation has one `=` | help: write `=`"},
    {"let a := 3", "1:7-2 E0101 `:=` is not a sign of the language | help: write `=`"},
    {"x = 3 // y", "1:7-2 E0101 `//` does not begin a comment | help: a comment begins with `--`"},
    {"# y", "1:1-1 E0101 `#` does not begin a comment | help: a comment begins with `--`"},
    {"x = 3\u201D",
     "1:6-3 E0101 `\u201D` is a curly quote | help: write the straight `\"`, for inches and around texts"},
    {"x = 3\u2032", "1:6-3 E0101 `\u2032` is not a foot mark here | help: write the straight `'` for feet"},
    {"x = 3 \u00D7 4", "1:7-2 E0101 `\u00D7` is not a sign of the language | help: write `*`"},
    {"x = \u00BD",
     "1:5-2 E0101 `\u00BD` is one character, not a fraction | help: write `1/2`; after a whole number "
     "`1-1/2`"},
    {"require a && b", "1:11-2 E0101 `&&` is not a sign of the language | help: write `and`"},
    {"x = 1\ry = 2",
     "1:6-1 E0101 this line ends in a way that is not read | help: save the file with line ends of `\\n` or "
     "`\\r\\n`"},
    {"taper(to = 3)",
     "1:14-0 E0101 expected `=` or `on` after `)` | help: an equation is written `a = b`, a shape "
     "`taper(...) on long edges`"},
    {"taper (to = 3) on long edges",
     "1:6-0 E0101 expected `=` or `on` after `taper` | help: an equation is written `a = b`, a shape "
     "`taper(...) on long edges`"},
    {"require(a > b)", "1:15-0 E0101 expected `=` or `on` after `)` | help: write a blank after `require`"},
    {"prt leg {\n}\n", "1:4-0 E0101 expected `=` or `on` after `prt` | help: did you mean `part`?"},
    {"if a {\n}\nelse {\n}", "3:1-4 E0101 `else` without its `if` | help: write `} else {` on one line"},
    {"a = 1; )", "1:8-1 E0101 expected a definition, not `)`"},
    {"part p { ) }", "1:10-1 E0101 expected a statement, not `)`"},
};

}  // namespace

TEST_SUITE("unit/grammar") {
    TEST_CASE("each mistake is told in the maker's words") {
        for (const Row& row : rows) {
            CAPTURE(row.text);
            CHECK(Parsed(row.text).report() == std::string(row.report) + "\n");
        }
    }

    TEST_CASE("an unknown unit lists the known ones") {
        const std::string report = Parsed("x = 3furlong").report();
        CHECK(report.starts_with("1:6-7 E0106 `furlong` is not a unit | help: the units are in, \""));
    }

    TEST_CASE("what is not text is refused with the place of the byte") {
        CHECK(Parsed("x = 1\n\xC3(").report() ==
              "2:1-1 E0103 byte 7 of the file (0xC3) is not UTF-8 text | help: save the file as UTF-8\n");
        CHECK(Parsed(std::string("x\0y", 3)).report() ==
              "1:2-1 E0103 byte 2 of the file is zero | help: save the file as UTF-8\n");
        CHECK(Parsed(std::string("x\0y", 3)).count(NodeKind::broken) == 1);
    }

    TEST_CASE("several mistakes in one file are all told, and the rest is read") {
        const Parsed parsed(
            "piece \"p\" {\n"
            "  wide = 3,5\n"
            "  part a of {\n    x = 1\n  }\n"
            "  deep = 4; tall = * 5; left = 6\n"
            "  part b {\n    grain up\n    right = 7 }\n"
            "  bottom = 8\n"
            "}\n");
        CHECK(parsed.report() ==
              "2:11-1 E0106 a comma stands in a number | help: write `3.5` with a point\n"
              "3:12-0 E0101 expected a wood after `of`, not `{`\n"
              "6:19-0 E0101 expected a value after `=`, not `*`\n"
              "8:10-0 E0101 expected `wide`, `deep` or `tall` after `grain`, not `up`\n");
        CHECK(parsed.count(NodeKind::broken) == 4);
        CHECK(parsed.count(NodeKind::part) == 1);
        CHECK(parsed.count(NodeKind::equation) == 4);  // deep, left, right, bottom
    }

    TEST_CASE("a statement that cannot be read is one node with its own bytes") {
        const Parsed parsed("a = 1\npart b c {\n  x = 3\n}  -- end\nd = 2\n");
        const NodeId broken = parsed.tree.child(parsed.tree.root(), 1);
        CHECK(parsed.tree.kind(broken) == NodeKind::broken);
        CHECK(parsed.tree.text(broken) == "part b c {\n  x = 3\n}");
        CHECK(parsed.comments() == std::vector<std::string>{"-- end"});
    }

    TEST_CASE("reading ends with the last mistake that is kept") {
        std::string text;
        for (std::size_t i = 0; i < 2 * limits::diagnostics; ++i) text += "x = )\n";
        const Parsed parsed(text);
        CHECK(parsed.diagnostics.errors() == limits::diagnostics);
        CHECK(parsed.tree.nodes().size() == 2);
    }
}

}  // namespace rodwright
