#include <doctest/doctest.h>

#include "tests/support/sample.hpp"

using namespace rodwright::testing;

// Rows by hand: n slats of width w, n - 1 gaps g between them and an end e at each side fill
// S = n w + (n - 1) g + 2 e. Slats of 2 in, 1/2 in apart, with ends of 1/4 in: common practice, no source.
TEST_SUITE_BEGIN("reference/joints");

namespace {

std::string slats(const std::string& count, const std::string& room, const std::string& lines) {
    return "part slat[" + count +
           "] of oak { grain wide; left = 0\"; wide = 20\"; deep = 2\"; bottom = 0\"; tall = 1/2\" }\n"
           "space slat along deep from 0\" to " +
           room + " { " + lines + " }\n";
}

}  // namespace

TEST_CASE("nine slats of 2 in, 1/2 in apart with 1/4 in ends, fill 22-1/2 in") {
    const Sample sample(slats("9", "22-1/2\"", "ends = 1/4\""));
    REQUIRE(sample.count("slat") == 9);
    for (int i = 0; i < 9; ++i) {
        CAPTURE(i);
        CHECK(sample.near("slat", i, 1) == rodwright::ratio((1 + 10 * i) * 254, 40));
    }
}

TEST_CASE("ends are found when the gap is given") {
    const Sample sample(slats("9", "22-1/2\"", "gap = 1/2\""));
    CHECK(sample.near("slat", 0, 1) == rodwright::ratio(254, 40));
    CHECK(sample.near("slat", 8, 1) == rodwright::ratio(81 * 254, 40));
}

TEST_CASE("as many as fit: the count comes from the wanted gap") {
    const Sample sample(slats("fit", "22-1/2\"", "gap = 1/2\"; ends = 1/4\""));
    CHECK(sample.count("slat") == 9);
    // Half an inch more room: still nine, the gaps grow to 9/16 in. 23 = 18 + 8 g + 1/2.
    const Sample wider(slats("fit", "23\"", "gap = 1/2\"; ends = 1/4\""));
    REQUIRE(wider.count("slat") == 9);
    const rodwright::Rational pitch = wider.near("slat", 1, 1) - wider.near("slat", 0, 1);
    CHECK(pitch == rodwright::ratio(41 * 254, 160));
}

TEST_SUITE_END();
