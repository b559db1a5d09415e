#include "compiler/check/check_data.hpp"

#include <doctest/doctest.h>

#include "compiler/stdlib.hpp"

using namespace rodwright;

namespace {

std::string changed(const std::string& from, const std::string& to) {
    for (const EmbeddedFile& file : stdlib_files()) {
        if (file.path != "data/checks.yaml") continue;
        std::string text(file.text);
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        return text.replace(at, from.size(), to);
    }
    FAIL("no checks.yaml");
    return {};
}

void check_refused(const std::string& from, const std::string& to) {
    CAPTURE(to);
    SourceManager sources;
    Diagnostics diagnostics;
    CHECK_FALSE(read_check_data(sources, sources.add("checks.yaml", changed(from, to)), diagnostics));
    REQUIRE_FALSE(diagnostics.list().empty());
    CHECK(diagnostics.list()[0].code == Code::bad_data);
}

}  // namespace

TEST_SUITE("unit/check") {
    TEST_CASE("all limits are there, above zero, and those of standards have a source") {
        const CheckData& data = check_data();
        CHECK(data.fit.gap.widest > 0);
        CHECK(data.fit.thinnest_wall > 0);
        CHECK(data.movement.widest > data.fit.gap.widest);
        CHECK(data.wood.run_out > 0);
        CHECK(data.standing.storage.child.to_double() == doctest::Approx(60 * 4.4482216152605));
        for (const TipTest& test : data.standing.tests) CHECK_FALSE(test.source.empty());
        for (const UsualSize& size : data.people) {
            CHECK(size.least < size.most);
            CHECK_FALSE(size.source.empty());
        }
    }

    TEST_CASE("limits that are not as they should be are refused at their place") {
        check_refused("widest: 2mm", "widest: 2 N");
        check_refused("widest: 2mm", "widest: 0mm");
        check_refused("widest: 2mm, ", "");
        check_refused("thinnest: 3mm, share: 0.25,", "thinnest: 3mm, shares: 0.25,");
        check_refused("down: 600 N", "down: 600");
        check_refused("child: 60 lbf", "child: heavy");
        check_refused("measure: top", "measure: arms");
        check_refused("trench: {share: 0.4, source: N}", "trench: {share: 0.4}");
    }
}
