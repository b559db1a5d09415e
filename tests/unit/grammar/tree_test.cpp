#include <doctest/doctest.h>

#include <algorithm>

#include "rod_text.hpp"

namespace rodwright {
namespace {

struct TreeRow {
    const char* text;
    const char* tree;  // kinds, operators and leaves; see meaning()
};

// Expressions by the precedence and association that rod.ebnf gives them, with the parentheses written out.
const TreeRow expressions[] = {
    {"a + b * c", "(binary + (name a) (binary * (name b) (name c)"},
    {"(a + b) * c", "(binary * (binary + (name a) (name b)) (name c)"},
    {"a - b - c", "(binary - (binary - (name a) (name b)) (name c)"},
    {"a - (b - c)", "(binary - (name a) (binary - (name b) (name c)"},
    {"a / b * c", "(binary * (binary / (name a) (name b)) (name c)"},
    {"-a * b", "(binary * (unary - (name a)) (name b)"},
    {"-a.left", "(unary - (member  (name a) (name left)"},
    {"- -a", "(unary - (unary - (name a)"},
    {"a or b and c", "(binary or (name a) (binary and (name b) (name c)"},
    {"not a and b", "(binary and (unary not (name a)) (name b)"},
    {"not a < b", "(unary not (binary < (name a) (name b)"},
    {"not not a", "(unary not (unary not (name a)"},
    {"a and not b or c", "(binary or (binary and (name a) (unary not (name b))) (name c)"},
    {"a + b <= c * d", "(binary <= (binary + (name a) (name b)) (binary * (name c) (name d)"},
    {"leg[front].back", "(member  (copy  (name leg) (word front)) (name back)"},
    {"leg[left front]", "(copy  (name leg) (word left) (word front)"},
    {"slat[n + 1]", "(copy  (name slat) (binary + (name n) (number 1)"},
    {"max(a, to = b)", "(call  (name max) (argument  (name a)) (argument  (name to) (name b)"},
    {"f(a == b)", "(call  (name f) (argument  (binary == (name a) (name b)"},
    {"f().left", "(member  (call  (name f)) (name left)"},
    {"(a, b)", "(point  (name a) (name b)"},
    {"((a), (b), c)", "(point  (name a) (name b) (name c)"},
    {"nearest chisel to a / 3", "(nearest  (word chisel) (binary / (name a) (number 3)"},
    {"if a then b else c + 1", "(choice  (name a) (name b) (binary + (name c) (number 1)"},
    {"none", "(none none"},
    {"given", "(given given"},
    {"nonesuch", "(name nonesuch"},
    {"piece.wide", "(member  (name piece) (name wide)"},
    {"1-5/8\" - 3", "(binary - (number 1-5/8\") (number 3)"},
    {"4' 2\" + 4'-2-1/2\"", "(binary + (number 4' 2\") (number 4'-2-1/2\")"},
    {"3 in + 3 in_", nullptr},
    {"1:8 * 0.5", "(binary * (number 1:8) (number 0.5)"},
    {"3/4 * 8%", "(binary * (number 3/4) (number 8%)"},
};

std::string closed(std::string tree) {
    const auto depth = std::ranges::count(tree, '(') - std::ranges::count(tree, ')');
    return tree.append(static_cast<std::size_t>(depth), ')');
}

std::string spaced(std::string tree) {
    for (std::size_t at = 1; (at = tree.find('(', at)) != std::string::npos; at += 2) {
        if (tree[at - 1] != ' ') tree.insert(at, 1, ' ');
    }
    return tree;
}

}  // namespace

TEST_SUITE("unit/grammar") {
    TEST_CASE("expressions become the tree that their operators ask for") {
        for (const TreeRow& row : expressions) {
            CAPTURE(row.text);
            const Parsed parsed(std::string("x = ") + row.text);
            if (row.tree == nullptr) {
                CHECK_FALSE(parsed.diagnostics.ok());
                continue;
            }
            CHECK(parsed.report() == "");
            const std::string value = closed("(file  (equation  (name x) " + std::string(row.tree));
            CHECK(closed(meaning(parsed.tree).substr(1)) == spaced(value));
        }
    }

    TEST_CASE("a node owns its bytes, without blanks and comments around them") {
        const Parsed parsed("  x = (a + b) * c -- y\n");
        CHECK(dump(parsed.tree) ==
              "file [0,23)\n"
              "  equation [2,17)\n"
              "    name [2,3) x\n"
              "    binary * [6,17)\n"
              "      binary + [7,12)\n"
              "        name [7,8) a\n"
              "        name [11,12) b\n"
              "      name [16,17) c\n");
        REQUIRE(parsed.tree.comments().size() == 1);
        CHECK(parsed.tree.comments()[0].begin == 18);
        CHECK(parsed.tree.comments()[0].end == 22);
    }

    TEST_CASE("the header of a part") {
        const Parsed parsed("part slat[fit] of ash, handed wide deep {}");
        CHECK(dump(parsed.tree) ==
              "file [0,42)\n"
              "  part [0,42)\n"
              "    name [5,9) slat\n"
              "    count [9,14)\n"
              "      word [10,13) fit\n"
              "    of [15,21)\n"
              "      name [18,21) ash\n"
              "    handed [23,39)\n"
              "      word [30,34) wide\n"
              "      word [35,39) deep\n"
              "    block [40,42) {}\n");
    }

    TEST_CASE("statement words are names where an equation or a shape goes on") {
        const Parsed parsed(
            "thick = 1\nthick deep\nlet = 2; step.left = 3; load on long edges; glue(1) on a, b c");
        CHECK(parsed.report() == "");
        CHECK(parsed.count(NodeKind::equation) == 3);
        CHECK(parsed.count(NodeKind::thick) == 1);
        CHECK(parsed.count(NodeKind::apply) == 2);
        CHECK(parsed.count(NodeKind::selector) == 3);
    }

    TEST_CASE("line ends are blanks in brackets, after commas and after operators") {
        const Parsed parsed("x = f(1,\n  2\n) +\n  3 *\n 4\njoin a,\n b to c with\td");
        CHECK(parsed.report() == "");
        CHECK(parsed.count(NodeKind::equation) == 1);
        CHECK(parsed.count(NodeKind::join) == 1);
    }

    TEST_CASE("a byte order mark and line ends of two bytes are read over") {
        const Parsed parsed("\xEF\xBB\xBFx = 1\r\ny = 2 -- z\r\n");
        CHECK(parsed.report() == "");
        CHECK(parsed.count(NodeKind::equation) == 2);
        CHECK(parsed.tree.text(parsed.tree.child(parsed.tree.root(), 0)) == "x = 1");
        CHECK(parsed.comments() == std::vector<std::string>{"-- z"});
    }

    TEST_CASE("children by number and by kind") {
        const Parsed parsed("param a = 1 to 2");
        const NodeId param = parsed.tree.child(parsed.tree.root(), 0);
        CHECK(parsed.tree.child_count(param) == 3);
        CHECK(parsed.tree.text(parsed.tree.child(param, 1)) == "1");
        CHECK(parsed.tree.text(parsed.tree.find(param, NodeKind::to)) == "to 2");
        CHECK(parsed.tree.find(param, NodeKind::from) == NodeId::none);
        CHECK(parsed.tree.child(param, 3) == NodeId::none);
        CHECK(kind_word(NodeKind::to) == "upper bound");
    }
}

}  // namespace rodwright
