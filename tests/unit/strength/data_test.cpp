#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/check/strength/strength_data.hpp"
#include "compiler/stdlib.hpp"

using namespace rodwright;

namespace {

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

std::string library_text() {
    for (const EmbeddedFile& file : stdlib_files()) {
        if (file.path == "data/loads.yaml") return file.text;
    }
    FAIL("no loads.yaml");
    return {};
}

std::string fault_of(const std::string& text) {
    SourceManager sources;
    Diagnostics diagnostics;
    CHECK_FALSE(
        strength::read_strength_data(sources, sources.add("loads.yaml", text), diagnostics).has_value());
    REQUIRE_FALSE(diagnostics.list().empty());
    return diagnostics.list().front().message;
}

}  // namespace

TEST_SUITE("unit/strength") {
    TEST_CASE("every use has cases with a source, and every rule is above zero") {
        const strength::StrengthData& data = strength::strength_data();
        CHECK(data.find("table") != nullptr);
        CHECK(data.find("trestle") == nullptr);
        for (const strength::UseLoads& use : data.uses) {
            CAPTURE(use.word);
            CHECK_FALSE(use.cases.empty());
            for (const strength::UseCase& each : use.cases) CHECK_FALSE(each.source.empty());
        }
        CHECK(data.rules.safety > 1);
        CHECK(data.rules.lasting < 1);
    }

    TEST_CASE("a file of loads that is not as it should be is refused at its place") {
        const std::string good = library_text();
        CHECK(fault_of(replaced(good, "down: 1000 N", "down: 1000 mm")) == "a load is a force above zero");
        CHECK(fault_of(replaced(good, "down: 1000 N", "down: 0 N")) == "a load is a force above zero");
        CHECK(fault_of(replaced(good, "down: 1000 N, ", "")) == "this case has no load");
        CHECK(fault_of(replaced(good, "at: middle", "at: corner")) == "no such word");
        CHECK(fault_of(replaced(good, "safety: 2", "safety: 0")) == "this is above zero");
    }
}
