#include "compiler/data/woods.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "compiler/stdlib.hpp"

using namespace rodwright;

namespace {

std::optional<WoodTable> woods_of(std::string text, Diagnostics& diagnostics, SourceManager& sources) {
    return read_woods(sources, sources.add("woods.yaml", std::move(text)), diagnostics);
}

void check_refused(const std::string& entry, const std::string& message_part, const std::string& place) {
    CAPTURE(entry);
    SourceManager sources;
    Diagnostics diagnostics;
    CHECK_FALSE(woods_of("woods:\n  " + entry + "\n", diagnostics, sources));
    REQUIRE(diagnostics.list().size() == 1);
    CHECK(diagnostics.list()[0].code == Code::bad_data);
    CHECK(diagnostics.list()[0].message.find(message_part) != std::string::npos);
    CHECK(sources.text(diagnostics.list()[0].primary).starts_with(place));
}

}  // namespace

TEST_SUITE("unit/data") {
    TEST_CASE("the woods that come with the compiler are read") {
        const auto& files = stdlib_files();
        const auto file = std::ranges::find(files, "data/woods.yaml", &EmbeddedFile::path);
        REQUIRE(file != files.end());
        SourceManager sources;
        Diagnostics diagnostics;
        const std::optional<WoodTable> woods = woods_of(file->text, diagnostics, sources);
        REQUIRE(woods);
        CHECK(std::ranges::count_if(woods->all(), [](const WoodSpecies& w) { return !w.sheet; }) >= 30);
        CHECK(std::ranges::count_if(woods->all(), &WoodSpecies::sheet) >= 4);
        // Wood Handbook, table 5-3b: white ash has specific gravity 0.60 at 12 %; 600 kg/m3 x 1.12 = 672.
        REQUIRE(woods->find("white_ash"));
        CHECK(woods->find("white_ash")->density == 672);
        // The same table: slippery elm 0.53 -> 593.6, 860 lbf -> 3825 N.
        REQUIRE(woods->find("red_elm"));
        CHECK(woods->find("red_elm")->density == 594);
        CHECK(woods->find("red_elm")->hardness == Rational(3825));
        for (const WoodSpecies& species : woods->all()) {
            CAPTURE(species.key);
            // No wood is lighter than balsa (about 160) or much heavier than lignum vitae (about 1250).
            CHECK(species.density > 150);
            CHECK(species.density < 1300);
        }
    }

    TEST_CASE("a wood is found by its exact key only") {
        SourceManager sources;
        Diagnostics diagnostics;
        const auto woods = woods_of(
            "woods:\n  elm: {common: elm, density: 560.5, colour: \"#b99a72\", source: N}\n"
            "  ash: {common: ash, density: 672, colour: \"#d9c6a0\", hardness: 5872, sheet: true, source: "
            "N}\n",
            diagnostics, sources);
        REQUIRE(woods);
        CHECK(woods->keys() == std::vector<std::string>{"ash", "elm"});
        CHECK(woods->find("elm")->density == ratio(1121, 2));
        CHECK_FALSE(woods->find("elm")->hardness);
        CHECK_FALSE(woods->find("elm")->sheet);
        CHECK(woods->find("ash")->sheet);
        CHECK(woods->find("Elm") == nullptr);
        CHECK(woods->find("") == nullptr);
    }

    TEST_CASE("a bad wood is refused with its place") {
        check_refused("elm: {common: elm, colour: \"#b99a72\", source: N}", "`density` is missing", "{");
        check_refused("elm: {common: elm, density: 560, colour: brown, source: N}", "a colour", "brown");
        check_refused("elm: {common: elm, density: heavy, colour: \"#b99a72\", source: N}", "not a number",
                      "heavy");
        check_refused("elm: {common: elm, density: 3 in, colour: \"#b99a72\", source: N}", "without a unit",
                      "3 in");
        check_refused("elm: {common: elm, density: 0, colour: \"#b99a72\", source: N}", "weighs", "0");
        check_refused("elm: {common: elm, density: 560, colour: \"#b99a72\", sheet: yes, source: N}",
                      "`true`", "yes");
        check_refused("elm: {common: elm, density: 560, color: 1, colour: \"#b99a72\", source: N}", "`color`",
                      "color");
        check_refused("Elm: {common: elm, density: 560, colour: \"#b99a72\", source: N}", "a wood's name",
                      "Elm");
        check_refused("elm: 560", "a map is wanted", "560");
    }
}
