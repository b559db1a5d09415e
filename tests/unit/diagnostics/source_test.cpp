#include <doctest/doctest.h>

#include "compiler/diagnostics/source.hpp"

using namespace rodwright;

TEST_SUITE("unit/diagnostics") {
    TEST_CASE("position counts characters, not bytes") {
        SourceManager sources;
        const FileId file = sources.add("a.rod", "ä = 1\n  b");
        CHECK(sources.position(file, 3).line == 1);
        CHECK(sources.position(file, 3).column == 3);
        CHECK(sources.position(file, 9).line == 2);
        CHECK(sources.position(file, 9).column == 3);
        CHECK(sources.line(file, 2) == "  b");
    }
}
