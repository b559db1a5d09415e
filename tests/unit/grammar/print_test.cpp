#include <doctest/doctest.h>

#include <algorithm>

#include "rod_text.hpp"

namespace rodwright {
namespace {

std::string printed(const std::string& text) {
    const Parsed parsed(text);
    CHECK(parsed.report() == "");
    return print(parsed.tree);
}

std::vector<std::string> sorted(std::vector<std::string> texts) {
    std::ranges::sort(texts);
    return texts;
}

struct PrintedRow {
    const char* text;
    const char* printed;
};

const PrintedRow printed_rows[] = {
    {"", ""},
    {"\n\n", ""},
    {"x=1", "x = 1\n"},
    {"a=(1+(2*b))*((c))", "a = (1 + 2 * b) * c\n"},
    {"a=b-(c-d)-e", "a = b - (c - d) - e\n"},
    {"a=- -b", "a = -(-b)\n"},
    {"a=-(b+c)*(-d)", "a = -(b + c) * -d\n"},
    {"a=(if b then c else d)+1", "a = (if b then c else d) + 1\n"},
    {"a=(nearest bit to b)/2", "a = (nearest bit to b) / 2\n"},
    {"a=(b+c).left", "a = (b + c).left\n"},
    {"require not(a and b)or(c<d)==(e)", "require not (a and b) or (c < d) == e\n"},
    {"require not ( a and b )", "require not (a and b)\n"},
    {"a=f( 1,b = 2 , )", "a = f(1, b = 2)\n"},
    {"a = 1 ;  b=2", "a = 1; b = 2\n"},
    {"a = 1 ;\nb=2", "a = 1\nb = 2\n"},
    {"a = 1\n\n\n\nb=2", "a = 1\n\nb = 2\n"},
    {"part a{\n\n x=1\n\n\n y=2\n\n}", "part a {\n    x = 1\n\n    y = 2\n}\n"},
    {"part a{x=1;y=2}", "part a { x = 1; y = 2 }\n"},
    {"part a{ }", "part a {}\n"},
    {"part a{\n}", "part a {\n}\n"},
    {"part a[ 3 ]of b,handed wide{}", "part a[3] of b, handed wide {}\n"},
    {"part a[3] handed wide{}", "part a[3], handed wide {}\n"},
    {"join a , b.c to d with e()", "join a, b.c to d with e\n"},
    {"round() on long edges,top face", "round on long edges, top face\n"},
    {"if a{\nx=1\n} else if b{\ny=2\n} else{\nz=3\n}",
     "if a {\n    x = 1\n} else if b {\n    y = 2\n} else {\n    z = 3\n}\n"},
    {"step cut a using saw{x=1,y=2\nz=\"3\"}test_piece",
     "step cut a using saw { x = 1, y = 2, z = \"3\" } test_piece\n"},
    {"needs bit a  3 (in)|saw (-b) c", "needs bit a 3 (in) | saw (-b) c\n"},
    {"glue a,b", "glue a b\n"},
    {"hold  screw cylinder( d,3\")at(0\",1\")", "hold screw cylinder(d, 3\") at (0\", 1\")\n"},
    {"use  seat for  2 on a,b", "use seat for 2 on a, b\n"},
    {"use shelf   books", "use shelf books\n"},
    {"-- a\n\n\n--b  \nx=1--c\n--d", "-- a\n\n--b\nx = 1  --c\n--d\n"},
    {"part a { -- b\n-- c\n x=1 -- d\n longer=2 -- e\n -- f\n} -- g\n",
     "part a {  -- b\n    -- c\n    x = 1       -- d\n    longer = 2  -- e\n    -- f\n}  -- g\n"},
    {"x = f(1, -- one\n 2)\ny=1", "-- one\nx = f(1, 2)\ny = 1\n"},
};

}  // namespace

TEST_SUITE("unit/grammar") {
    TEST_CASE("text has one canonical form") {
        for (const PrintedRow& row : printed_rows) {
            CAPTURE(row.text);
            CHECK(printed(row.text) == row.printed);
        }
    }

    TEST_CASE("a long line goes on in the next after a comma or an operator") {
        CHECK(printed("join first_long_name, second_long_name to third_long_name with some_joint(first = 1, "
                      "second_argument = 2, third = 3)") ==
              "join first_long_name, second_long_name to third_long_name with some_joint(first = 1,\n"
              "        second_argument = 2, third = 3)\n");
        CHECK(printed("part a { first_long_name = second_long_name; third_long_name = fourth_long_name; "
                      "fifth_name = sixth_name }") ==
              "part a {\n"
              "    first_long_name = second_long_name; third_long_name = fourth_long_name; fifth_name = "
              "sixth_name\n"
              "}\n");
    }

    TEST_CASE("every sample is read without an error") {
        CHECK(samples().size() > 3);
        for (const Sample& sample : samples()) {
            CAPTURE(sample.name);
            CHECK(Parsed(sample.text).report() == "");
        }
    }

    TEST_CASE("printed text means the same, has the same comments, and is printed as it is") {
        for (const Sample& sample : samples()) {
            CAPTURE(sample.name);
            const Parsed first(sample.text);
            const std::string text = print(first.tree);
            const Parsed second(text);
            CHECK(second.report() == "");
            CHECK(meaning(second.tree) == meaning(first.tree));
            CHECK(sorted(second.comments()) == sorted(first.comments()));
            CHECK(print(second.tree) == text);
        }
    }
}

}  // namespace rodwright
