// Limits of a shop's rack.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "compiler/limits.hpp"
#include "tests/unit/limits/refused.hpp"
#include "tests/unit/rack/rack_text.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

std::string board(std::size_t number, const std::string& more = {}) {
    return fmt::format("  - {{name: A{}, wood: cherry, thickness: 4/4, width: 6 in, length: 4 ft{}}}\n",
                       number, more);
}

std::string boards(std::size_t count) {
    std::string text = "boards:\n";
    for (std::size_t i = 0; i < count; ++i) text += board(i);
    return text;
}

std::string rack_refusal(const std::string& text) {
    const RackText read(text);
    CHECK_FALSE(read.rack);
    CHECK(read.diagnostics.list().size() == 1);
    return first_of(Code::too_large, read.diagnostics, read.sources);
}

std::string defects(std::size_t count) {
    return ", defects: [\n" +
           repeated("      {from_end: 0, from_edge: 0, length: 1 in, width: 1 in},\n", count) + "    ]";
}

}  // namespace

TEST_SUITE("unit/limits") {
    TEST_CASE("rack_entries: boards, sheets and offers") {
        CHECK(rack_of(boards(limits::rack_entries)).boards.size() == limits::rack_entries);
        const std::string passed = fmt::format("a rack's file has at most {} entries", limits::rack_entries);
        CHECK(rack_refusal(boards(limits::rack_entries + 1)) ==
              fmt::format("{}:5 {}", limits::rack_entries + 2, passed));
        const std::string offer =
            "dealer: {dowels: [{wood: cherry, diameter: 10mm, length: 1 m, price: 0}]}\n";
        CHECK(rack_of("money: crowns\n" + boards(limits::rack_entries - 1) + offer).dowels.size() == 1);
        CHECK(rack_refusal("money: crowns\n" + boards(limits::rack_entries) + offer) ==
              fmt::format("{}:19 {}", limits::rack_entries + 3, passed));
    }

    TEST_CASE("rack_pieces: boards and sheets, each one counted") {
        const auto with = [](std::size_t first, std::size_t second) {
            return "boards:\n" + board(1, fmt::format(", count: {}", first)) +
                   board(2, fmt::format(", count: {}", second)) + board(3);
        };
        const std::string passed =
            fmt::format("a rack holds at most {} boards and sheets", limits::rack_pieces);
        CHECK(rack_of(with(limits::rack_pieces - 2, 1)).boards.size() == 3);
        CHECK(rack_refusal(with(limits::rack_pieces - 1, 1)) == "4:5 " + passed);
        CHECK(rack_refusal(with(1, limits::rack_pieces)) == "3:5 " + passed);
        CHECK(rack_refusal(with(1, limits::rack_pieces + 1)).ends_with(passed));
    }

    TEST_CASE("board_defects: defects of one board") {
        CHECK(rack_of("boards:\n" + board(1, defects(limits::board_defects))).boards.at(0).defects.size() ==
              limits::board_defects);
        CHECK(rack_refusal("boards:\n" + board(1, defects(limits::board_defects + 1))) ==
              fmt::format("{}:7 more than {} defects on one board", limits::board_defects + 3,
                          limits::board_defects));
    }
}
