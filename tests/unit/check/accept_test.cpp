// Accepted findings, and the table of checks.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "compiler/check/check_table.hpp"
#include "compiler/check/run_checks.hpp"
#include "compiler/diagnostics/render.hpp"
#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

Diagnostics with_warning_and_error() {
    Diagnostics found;
    found.add(diagnose(Code::thin_wall, {}, "thin"));
    found.add(diagnose(Code::run_into, {}, "in each other"));
    return found;
}

Diagnostics accepted_by(std::vector<Accept> accepts) {
    Piece piece;
    piece.accepts = std::move(accepts);
    return accepted(with_warning_and_error(), piece);
}

}  // namespace

TEST_SUITE("unit/check") {
    TEST_CASE("what is accepted stays, is counted apart, and comes last") {
        const Diagnostics judged =
            accepted_by({{"E1001", "they are one part", {}}, {"W1104", "it is plugged", {}}});
        CHECK(judged.ok());
        CHECK(judged.list().size() == 2);
        CHECK(judged.list()[0].accepted == "it is plugged");
        CHECK(summary(judged) == "2 accepted");
        const Diagnostics one = accepted_by({{"E1001", "they are one part", {}}});
        CHECK(summary(one) == "1 warning, 1 accepted");
        CHECK(one.sorted().back().code == Code::run_into);
    }

    TEST_CASE("an accept that fits nothing is a finding, once for each line") {
        const Diagnostics judged = accepted_by({{"W1105", "it hangs", {}}});
        CHECK(judged.errors() == 1);
        CHECK(judged.list().size() == 3);
        CHECK(judged.list().back().code == Code::accepts_nothing);
    }

    TEST_CASE("what is accepted on a part is accepted there alone") {
        const std::string text =
            "piece \"Racks\" { wide = 10\"; deep = 10\"; tall = 10\"\n"
            "part foot { grain wide; left = 0\"; wide = 5\"; front = 0\"; deep = 2\"; bottom = 0\"; tall = "
            "1\" }\n"
            "part low { grain wide; left = 0\"; wide = 5\"; front = 0\"; deep = 2\"; bottom = 3\"; tall = "
            "1\" }\n"
            "part high { grain wide; left = 0\"; wide = 5\"; front = 0\"; deep = 2\"; bottom = 6\"; tall = "
            "1\" }\n"
            "accept W1105 on high because \"it hangs on the wall\" }\n";
        const CompiledDesign design = compile_text(text);
        Diagnostics of_solids;
        SolidStore solids(design.piece(), of_solids);
        const Diagnostics judged = accepted(run_checks(design.piece(), solids).diagnostics, design.piece());
        const auto loose = [&](const char* part) {
            return std::ranges::find_if(judged.list(), [&](const Diagnostic& each) {
                return each.code == Code::loose_part && each.message.find(part) != std::string::npos;
            });
        };
        REQUIRE(loose("`high`") != judged.list().end());
        REQUIRE(loose("`low`") != judged.list().end());
        CHECK(loose("`high`")->accepted == "it hangs on the wall");
        CHECK(loose("`low`")->accepted.empty());
    }

    TEST_CASE("every check has a name of its own, says what it looks for, and may report something") {
        std::set<std::string_view> names;
        for (const Check& check : all_checks()) {
            CAPTURE(check.name);
            CHECK(names.insert(check.name).second);
            CHECK_FALSE(check.summary.empty());
            CHECK_FALSE(check.codes.empty());
            CHECK((check.run != nullptr));
        }
    }

    TEST_CASE("a check reports only what the table says, and the examples nothing at all") {
        for (const std::string& name : example_names()) {
            CAPTURE(name);
            const CompiledDesign design = compile_text(example_text(name));
            Diagnostics of_solids;
            SolidStore solids(design.piece(), of_solids);
            const Findings findings = run_checks(design.piece(), solids);
            for (const Diagnostic& each : findings.diagnostics.list()) FAIL_CHECK(each.message);
            CHECK(findings.numbers.size() > 10);
            for (const Number& number : findings.numbers) {
                CAPTURE(number.title);
                CHECK_FALSE(number.formula.empty());
                CHECK_FALSE(number.source.empty());
            }
        }
    }
}
