// The sheets of numbers, and what the cover says of findings.
#include <doctest/doctest.h>

#include <algorithm>

#include "compiler/check/run_checks.hpp"
#include "tests/unit/drawing/making.hpp"
#include "tests/unit/drawing/sheet_check.hpp"

using namespace rodwright;
using namespace rodwright::drawing;
using testing::Making;

namespace {

struct Checked {
    Making making;
    Findings findings;

    explicit Checked(const std::string& example) : making(testing::example_piece(example)) {
        findings = run_checks(making.piece, making.solids);
        making.input.findings = &findings;
    }
    // Every text of the sheets whose title is that, or begins with it.
    std::string texts(const OptionValues& options, const std::string& title) {
        std::string all;
        for (const Sheet& sheet : making.sheets(options)) {
            if (!sheet.title.starts_with(title)) continue;
            for (const std::string& fault : testing::faults_of(sheet, *making.fonts)) FAIL_CHECK(fault);
            for (const Item& item : sheet.items) {
                if (const auto* text = std::get_if<Text>(&item)) all += text->text + "\n";
            }
        }
        return all;
    }
};

}  // namespace

TEST_SUITE("unit/drawing") {
    TEST_CASE("numbers stand on sheets of their own, with limit, source and what was assumed") {
        for (const char* format : {"a4", "letter", "a3"}) {
            CAPTURE(format);
            Checked checked("instrument_tray");
            const std::string texts = checked.texts({{"sheet", format}}, "Numbers");
            for (const char* wanted : {"Movement", "Stability", "Walls", "limit", "GTR-282", "an estimate"}) {
                CAPTURE(wanted);
                CHECK(texts.find(wanted) != std::string::npos);
            }
        }
    }

    TEST_CASE("without findings there is no sheet of numbers") {
        Making making(testing::example_piece("instrument_tray"));
        for (const Sheet& sheet : making.sheets({})) CHECK(!sheet.title.starts_with("Numbers"));
    }

    TEST_CASE("the cover has findings, the worst first, advice and what is accepted named as that") {
        Checked checked("instrument_tray");
        Diagnostics& found = checked.findings.diagnostics;
        found.add(diagnose(Code::mind_the_dust, {}, "mind it"));
        Diagnostic lived_with = diagnose(Code::thin_wall, {}, "thin there");
        lived_with.accepted = "it is plugged";
        found.add(lived_with);
        found.add(diagnose(Code::no_room, {}, "tight here"));
        const packet::Context context = checked.making.context({});
        CHECK(context.findings == std::vector<std::string>{"tight here", "advice: mind it",
                                                           "accepted, because it is plugged: thin there"});
    }
}
