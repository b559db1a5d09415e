#include <doctest/doctest.h>

#include "compiler/graph/phrase.hpp"

using namespace rodwright;

TEST_SUITE("unit/graph") {
    TEST_CASE("a phrase is read in either unit, with the parts or with their roles") {
        Phrase phrase;
        phrase.words = {"Mark the shoulders ",
                        Quantity::length(inches(7, 8)),
                        " from the end of ",
                        Phrase::NamedPart{"tenon", "side apron"},
                        "; ",
                        Phrase::NamedPart{"tenon", "side apron"},
                        " meets ",
                        Phrase::NamedPart{"mortise", "leg"},
                        "."};
        const LengthStyle inch;
        const LengthStyle metric = {LengthUnit::millimetre, 1, true};
        CHECK(read_out(phrase, inch) ==
              "Mark the shoulders 7/8\" from the end of side apron; side apron meets leg.");
        // 7/8 in are 22.225 mm.
        CHECK(read_out(phrase, metric) ==
              "Mark the shoulders ~22 mm from the end of side apron; side apron meets leg.");
        CHECK(read_by_role(phrase, inch) ==
              "Mark the shoulders 7/8\" from the end of {tenon}; {tenon} meets {mortise}.");
        const std::vector<Phrase::NamedPart> parts = {{"tenon", "side apron"}, {"mortise", "leg"}};
        CHECK(parts_named(phrase) == parts);
        CHECK(size_of(phrase) > size_of("Mark the shoulders "));
    }

    TEST_CASE("a phrase without words says nothing") {
        CHECK(read_out({}, {}).empty());
        CHECK(parts_named("Cut it.").empty());
    }
}
