// Statements that go on in the next line before a clause.
#include <doctest/doctest.h>

#include "tests/unit/grammar/rod_text.hpp"

using namespace rodwright;

TEST_SUITE_BEGIN("unit/grammar");

namespace {

std::string joint(const std::string& body) {
    return "joint j(a: end, b: face) {\n" + body + "\n}\n";
}

}  // namespace

TEST_CASE("a clause in the next line means the same as in the same line") {
    const char* const steps[][2] = {
        {"step cut a \"Cut.\"\n  using saw { fence = 1\", stop = 2\" }\n  test_piece\n  after x, y because "
         "\"z\"\n  caution \"c\"",
         "step cut a \"Cut.\" using saw { fence = 1\", stop = 2\" } test_piece after x, y because \"z\" "
         "caution \"c\""},
        {"check x > 1\n else warn \"w\"", "check x > 1 else warn \"w\""},
        {"remove b cylinder(1\", 2\")\r\n    repeat 3 every 1\" along widthwise",
         "remove b cylinder(1\", 2\") repeat 3 every 1\" along widthwise"},
        {"step cut a \"Cut.\" -- why\n  using saw", "step cut a \"Cut.\" using saw"},
    };
    for (const auto& step : steps) {
        const char* const broken = step[0];
        const char* const whole = step[1];
        CAPTURE(broken);
        const Parsed in_lines(joint(broken));
        const Parsed in_one(joint(whole));
        REQUIRE(in_lines.report() == "");
        REQUIRE(in_one.report() == "");
        CHECK(meaning(in_lines.tree) == meaning(in_one.tree));
    }
}

TEST_CASE("a parameter or another statement in the next line is one of its own") {
    const Parsed parsed(joint("step cut a \"Cut.\"\nafter = 3\nusing = 4\nstep fit \"Fit.\""));
    CHECK(parsed.report() == "");
    CHECK(parsed.count(NodeKind::equation) == 2);
    CHECK(parsed.count(NodeKind::step) == 2);
    CHECK(parsed.count(NodeKind::after) == 0);
}

TEST_CASE("a blank line ends the statement") {
    const Parsed parsed(joint("step cut a \"Cut.\"\n\nusing saw"));
    CHECK(parsed.diagnostics.errors() == 1);
}

TEST_CASE("a mistake in a step takes its clauses in the next lines with it") {
    const Parsed parsed(joint("step cut a 3\n  using saw\n  after x because \"y\"\nstep fit \"Fit.\""));
    CHECK(parsed.diagnostics.errors() == 1);
    CHECK(parsed.count(NodeKind::step) == 1);
}

TEST_CASE("long statements are broken before their clauses") {
    const std::string text(60, 'x');
    const Parsed parsed(joint("check a > b else warn \"" + text + text + "\""));
    CHECK(print(parsed.tree) ==
          "joint j(a: end, b: face) {\n    check a > b\n            else warn \"" + text + text + "\"\n}\n");
}

TEST_SUITE_END();
