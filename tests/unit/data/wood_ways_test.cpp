// How woods move, from its file.
#include <doctest/doctest.h>

#include <string>

#include "compiler/data/woods.hpp"

using namespace rodwright;

namespace {

struct Ways {
    SourceManager sources;
    Diagnostics diagnostics;
    WoodTable woods{{{"ash", "ash", 600, "#d9c6a0", std::nullopt, false, "N"}}};
    bool ok = false;

    explicit Ways(std::string text) {
        const FileId file = sources.add("wood_ways.yaml", std::move(text));
        ok = read_wood_ways(sources, file, woods, diagnostics);
    }
    std::string first() const { return diagnostics.list().empty() ? "" : diagnostics.list().front().message; }
};

}  // namespace

TEST_SUITE("unit/data") {
    TEST_CASE("movement and cautions are put to their woods") {
        const Ways ways(
            "movement:\n  ash: {radial: 0.001, tangential: 0.002, source: N}\ncautions:\n  ash: {caution: "
            "splinters, source: N}\n");
        CHECK(ways.ok);
        CHECK(ways.woods.all().front().radial == ratio(1, 1000));
        CHECK(ways.woods.all().front().tangential == ratio(2, 1000));
        CHECK(ways.woods.all().front().caution == "splinters");
    }

    TEST_CASE("what cannot be is refused where it stands") {
        CHECK(
            Ways("movement:\n  oak: {radial: 0.001, tangential: 0.002, source: N}\ncautions: {}\n").first() ==
            "there is no wood `oak`");
        CHECK(Ways("movement:\n  ash: {radial: 0.001, tangential: 0.2, source: N}\ncautions: {}\n").first() ==
              "a change in size for each percent of moisture is above 0, and small");
        CHECK(Ways("movement:\n  ash: {radial: 0, tangential: 0.002, source: N}\ncautions: {}\n")
                  .diagnostics.errors() == 1);
        for (const char* bad : {"movement: 3\ncautions: {}\n", "movement: {}\n",
                                "movement:\n  ash: {radial: 0.001}\n"
                                "cautions: {}\n",
                                "- a\n"}) {
            CAPTURE(bad);
            CHECK_FALSE(Ways(bad).ok);
            CHECK_FALSE(Ways(bad).diagnostics.ok());
        }
    }
}
