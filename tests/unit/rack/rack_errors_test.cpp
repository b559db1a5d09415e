// What a maker is told of a rack's file that is wrong, and where.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "tests/unit/rack/rack_text.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

const std::string board = "name: A, wood: cherry, thickness: 4/4, width: 6 in, length: 4 ft";
const std::string sheet = "name: P, wood: mdf, thickness: 18mm, length: 2 m, width: 1 m";
const std::string lumber = "wood: cherry, thickness: 4/4, width: 6 in, length: 4 ft, price: 1";

// `place` is the text that the one diagnostic points at the beginning of.
void check_told(const std::string& text, const std::string& place, const std::string& code_and_message,
                const std::string& help) {
    CAPTURE(text);
    const RackText read(text);
    CHECK_FALSE(read.rack);
    CAPTURE(read.report());
    REQUIRE(read.diagnostics.list().size() == 1);
    const Diagnostic& told = read.diagnostics.list()[0];
    CHECK(fmt::format("{} {}", info(told.code).code, told.message) == code_and_message);
    CHECK(told.help.find(help) != std::string::npos);
    CHECK(told.help.empty() == help.empty());
    CHECK(read.sources.text(told.primary.file).substr(told.primary.begin).starts_with(place));
}

// A board with more fields; `place` is that of the diagnostic.
void check_board(const std::string& more, const std::string& place, const std::string& told,
                 const std::string& help) {
    check_told("boards:\n  - {" + board + ", " + more + "}\n", place, told, help);
}

// A board with one field otherwise.
void check_changed(const std::string& old_field, const std::string& new_field, const std::string& told,
                   const std::string& help) {
    std::string text = "boards:\n  - {" + board + "}\n";
    text.replace(text.find(old_field), old_field.size(), new_field);
    check_told(text, new_field.substr(new_field.find(": ") + 2), told, help);
}

void check_sheet(const std::string& more, const std::string& place, const std::string& told,
                 const std::string& help) {
    check_told("sheets:\n  - {" + sheet + ", " + more + "}\n", place, told, help);
}

void check_offer(const std::string& list, const std::string& entry, const std::string& place,
                 const std::string& told, const std::string& help) {
    check_told("money: crowns\ndealer: {" + list + ": [{" + entry + "}]}\n", place, told, help);
}

}  // namespace

TEST_SUITE("unit/rack") {
    TEST_CASE("rack: keys and kinds of values") {
        check_told("bords: []\n", "bords", "E0601 there is no field `bords` here", "write `boards`");
        check_told("- A\n", "- A", "E0601 a map is wanted here, this is a list", "");
        check_told("boards: A\n", "A", "E0601 a list is wanted here, this is a word or a number", "");
        check_told("boards: [A]\n", "A", "E0601 a map is wanted here, this is a word or a number", "");
        check_told("dealer: [A]\n", "[A", "E0601 a map is wanted here, this is a list", "");
        check_told("dealer: {lumbre: []}\n", "lumbre", "E0601 there is no field `lumbre` here",
                   "write `lumber`");
        check_told("boards: [{}]\n", "{",
                   "E0601 the fields `name`, `wood`, `thickness`, `width`, `length` are missing here",
                   "{name: A1, wood: white_ash, thickness: 4/4, width: 7-1/2 in, length: 8 ft}");
        check_told("boards: [{name: A, wood: cherry, thickness: 4/4, width: 6 in}]\n", "{name",
                   "E0601 the field `length` is missing here", "length: 8 ft");
        check_board("colour: red", "colour", "E0601 there is no field `colour` here",
                    "the fields here are `name`, `wood`");
        check_board("frum: A", "frum", "E0601 there is no field `frum` here", "write `from`");
        check_board("from: B", "B", "E0601 a board that was sawn from another is an offcut",
                    "under `offcuts`");
        check_board("note: [a]", "[a", "E0601 a word or a number is wanted here, this is a list", "");
        check_board("surfaced: yes", "yes", "E0601 `true` or `false` is wanted here", "");
        check_board("checks: 2 in, 1 in", "1 in}", "E0601 there is no field `1 in` here", "`[2 in, 1 in]`");
    }

    TEST_CASE("rack: woods") {
        check_changed("wood: cherry", "wood: chery", "E0602 there is no wood `chery`",
                      "did you mean `cherry`?");
        check_changed("wood: cherry", "wood: oak", "E0602 there is no wood `oak`", "rodwright list woods");
        check_changed("wood: cherry", "wood: mdf", "E0601 `mdf` is made in sheets", "under `sheets`");
        check_told("sheets: [{name: P, wood: cherry, thickness: 18mm, length: 2 m, width: 1 m}]", "cherry",
                   "E0601 `cherry` is not made in sheets", "under `boards`");
        check_board("cut: quarter", "quarter", "E0601 `quarter` is no way to saw a board",
                    "`flat`, `rift` or `quartered`");
    }

    TEST_CASE("rack: names") {
        check_changed("name: A", "name: A B", "E0601 `A B` cannot be the name of a board", "such as `A1`");
        check_changed("name: A", "name: \"\"", "E0601 `` cannot be the name of a board", "such as `A1`");
        check_changed("name: A", "name: " + std::string(41, 'A'),
                      "E0601 `" + std::string(40, 'A') + "...` cannot be the name of a board", "40 bytes");
        check_told("boards: [{name: null, wood: cherry, thickness: 4/4, width: 6 in, length: 4 ft}]", "name",
                   "E0601 a word or a number is wanted here, this is no value", "");
        const RackText twice("boards: [{" + board + "}]\nsheets:\n- {name: A, wood: mdf, thickness: 6mm, " +
                             "length: 2 m, width: 1 m}\n");
        CHECK(twice.report() ==
              "3:10 E0601 `A` is already a name | give each board and each sheet a name of its own; boards "
              "alike share one entry with `count`");
        CHECK(twice.diagnostics.list().at(0).labels.at(0).span.begin == 16);
    }

    TEST_CASE("rack: lengths") {
        check_changed("width: 6 in", "width: 6", "E0601 `6` has no unit", "`6 in` or `6mm`");
        check_changed("width: 6 in", "width: wide", "E0601 `wide` is not a length", "`7-1/2 in`");
        check_changed("width: 6 in", "width: 6 lb", "E0601 `6 lb` is not a length", "`7-1/2 in`");
        check_changed("width: 6 in", "width: 0 in", "E0601 `0 in` is too small", "from 1mm to 3m");
        check_changed("width: 6 in", "width: 0", "E0601 `0` is too small", "from 1mm to 3m");
        check_changed("width: 6 in", "width: -6 in", "E0601 `-6 in` is not a length", "`7-1/2 in`");
        check_changed("width: 6 in", "width: 6 in to 5 m", "E0601 `5 m` is too large", "from 1mm to 3m");
        check_changed("width: 6 in", "width: 6 to 5 in", "E0601 `6` has no unit", "`6 in`");
        check_changed("length: 4 ft", "length: 30.1 m", "E0601 `30.1 m` is too large", "from 1mm to 30m");
        check_changed("thickness: 4/4", "thickness: 3/8", "E0601 `3/8` has no unit",
                      "`3/8 in` or `3/8mm`, or rough quarters such as `4/4`");
        check_changed("thickness: 4/4", "thickness: 99/4", "E0601 `99/4 in` is too large",
                      "from 1mm to 500mm");
        check_changed("thickness: 4/4", "thickness: 100/4", "E0601 `100/4` has no unit", "such as `4/4`");
        check_changed("thickness: 4/4", "thickness: [4/4]",
                      "E0601 a word or a number is wanted here, this is a list", "");
        check_board("surfaced: true", "4/4", "E0601 quarters are rough, a surfaced board is thinner",
                    "such as `13/16 in`");
        check_sheet("count: 1, trim: 50 cm", "50 cm", "E0601 the trim leaves nothing of this sheet",
                    "off each edge");
    }

    TEST_CASE("rack: what spoils a board") {
        check_board("checks: [2 ft, 2 ft]", "[2 ft", "E0601 the end checks leave nothing of this board",
                    "at the first end and at the other");
        check_board("checks: [1 in, 1 in, 1 in]", "[1 in", "E0601 a board has two ends, here are 3 lengths",
                    "`checks: [2 in, 1 in]`");
        check_board("checks: []", "[]", "E0601 a board has two ends, here are 0 lengths", "[2 in, 1 in]");
        check_board("sapwood: 6.1 in", "6.1 in", "E0601 the sapwood is wider than the board", "strip");
        check_board("bow: 4 ft", "4 ft}", "E0601 this board would be bent more than it is long", "`1/8 in`");
        check_board("cup: 6 in", "6 in}", "E0601 this board would be cupped more than it is wide",
                    "`1/16 in`");
        check_board("twist: 4 ft", "4 ft}", "E0601 this board would be twisted more than it is long",
                    "fourth corner");
        check_board("moisture: 8", "8}", "E0601 `8` is not a share from 0% to 100%", "`8%`");
        check_board("moisture: 101%", "101%", "E0601 `101%` is not a share from 0% to 100%", "`8%`");
        check_board("moisture: -1%", "-1%", "E0601 `-1%` is not a share from 0% to 100%", "`8%`");
    }

    TEST_CASE("rack: defects lie in the board") {
        const auto defect = [](const char* fields) { return fmt::format("defects: [{{{}}}]", fields); };
        check_board(defect("from_end: 47 in, from_edge: 1 in, length: 2 in, width: 1 in"), "{from_end",
                    "E0601 this defect reaches past the board's length or width", "where it begins");
        check_board(defect("from_end: 1 in, from_edge: 5.5 in, length: 2 in, width: 1 in"), "{from_end",
                    "E0601 this defect reaches past the board's length or width", "where it begins");
        check_board(defect("from_end: 1 in, from_edge: 0, length: 0, width: 1 in"), "{from_end",
                    "E0601 this defect has no size", "`length` along the board");
        check_board(defect("from_end: 1 in, length: 1 in"), "{from_end",
                    "E0601 the fields `from_edge`, `width` are missing here", "note: knot");
        check_board(defect("from_end: 1 in, from_edge: 0, length: 1 in, width: 1 in, name: knot"), "name",
                    "E0601 there is no field `name` here", "the fields here are");
        check_sheet("defects: [{from_end: 1 m, from_edge: 0, length: 1 m, width: 1001mm}]", "{from_end",
                    "E0601 this defect reaches past the board's length or width", "where it begins");
    }

    TEST_CASE("rack: counts, prices, money") {
        for (const std::string count : {"0", "-1", "1/2", "2 in", "two"}) {
            check_board("count: " + count, count, "E0601 `" + count + "` is not how many there are",
                        "a whole number from 1");
        }
        check_board("price: 42", "price", "E0601 there are prices, but not in which money",
                    "`money: crowns`");
        for (const std::string price : {"-3", "3 in", "dear", "1000000001"}) {
            check_told("money: crowns\nboards: [{" + board + ", price: " + price + "}]", price,
                       "E0601 `" + price + "` is not a price", "such as `6.40`");
        }
    }

    TEST_CASE("rack: what a dealer sells") {
        check_offer("lumber", "wood: cherry, thickness: 4/4, width: 9 in to 5 in, length: 4 ft, price: 1",
                    "9 in to", "E0601 these go from the larger to the smaller", "`5 in to 9 in`");
        check_offer("lumber", "wood: cherry, thickness: 4/4, width: 9 in, length: 4 ft to 3 ft, price: 1",
                    "4 ft to", "E0601 these go from the larger to the smaller", "the smaller first");
        check_offer("lumber", "wood: cherry, thickness: [], width: 9 in, length: 4 ft, price: 1", "[]",
                    "E0601 no thickness is sold here", "`[4/4, 5/4, 8/4]`");
        check_offer("lumber", "wood: cherry, thickness: [4/4, 5], width: 9 in, length: 4 ft, price: 1", "5]",
                    "E0601 `5` has no unit", "`4/4`");
        check_offer("lumber", "wood: cherry", "{wood: cherry}",
                    "E0601 the fields `thickness`, `width`, `length`, `price` are missing here",
                    "a board foot");
        check_offer("lumber", "wood: mdf, thickness: 4/4, width: 9 in, length: 4 ft, price: 1", "mdf",
                    "E0601 `mdf` is made in sheets", "under `dealer: sheets`");
        check_offer("sheets", "wood: mdf, thickness: 18mm, length: 2 m, width: 1 m, price: 1, grain: up",
                    "up", "E0601 `up` is no direction of the face grain", "`length` or `width`");
        check_offer("sheets", "wood: cherry, thickness: 18mm, length: 2 m, width: 1 m, price: 1", "cherry",
                    "E0601 `cherry` is not made in sheets", "under `dealer: lumber`");
        check_offer("dowels", "wood: cherry, diameter: 3/8, length: 36 in, price: 1", "3/8",
                    "E0601 `3/8` has no unit", "`3/8 in`");
        check_offer("dowels", "wood: cherry, diameter: 3/8 in, length: 36 in", "{wood",
                    "E0601 the field `price` is missing here", "`{wood: beech, diameter: 3/8 in");
    }

    TEST_CASE("rack: all that is wrong is told in one run, in the order of the file") {
        const RackText read(
            "boards:\n"
            "  - name: A 1\n"
            "    wood: chery\n"
            "    thickness: 3/8\n"
            "    width: 0 in\n"
            "    length: 8 ft\n"
            "    moisture: 120%\n"
            "  - {name: B, wood: mdf}\n"
            "sheets: [{name: B, wood: cherry, thickness: 18mm, length: 2 m, width: 1 m, gain: none}]\n"
            "dealer: {dowels: [{wood: cherry, diameter: 3/8 in, length: 36, price: -1}]}\n");
        std::string places;
        for (const Diagnostic& diagnostic : read.diagnostics.sorted()) {
            const Position at = read.sources.position(diagnostic.primary.file, diagnostic.primary.begin);
            places += fmt::format("{}:{} ", at.line, at.column);
        }
        CAPTURE(read.report());
        CHECK(places == "2:11 3:11 4:16 5:12 7:15 8:5 8:21 9:17 9:26 9:76 10:60 10:64 10:71 ");
    }
}
