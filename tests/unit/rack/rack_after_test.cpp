#include "compiler/stock/rack/rack_after.hpp"

#include <doctest/doctest.h>

#include "compiler/quantity/quantity.hpp"
#include "tests/unit/rack/rack_text.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

std::string board_named(const std::string& name) {
    return "{name: " + name + ", wood: cherry, thickness: 4/4, width: 6 in, length: 4 ft}";
}

std::string offcut(const std::string& name, const std::string& of) {
    return "{name: " + name + ", from: " + of + ", wood: cherry, thickness: 4/4, width: 6 in, length: 20 in}";
}

RackChange used(const std::vector<std::string>& names) {
    RackChange change;
    for (const std::string& name : names) change.used.push_back({name, 1});
    return change;
}

// The same, and 20 in of the last of them stay.
RackChange used_in_part(const std::vector<std::string>& names) {
    RackChange change = used(names);
    change.left.push_back({names.back(), 0, 0, inches(20), inches(6)});
    return change;
}

std::string changed(const std::string& text, const RackChange& change) {
    return rack_after(text, rack_of(text), change);
}

}  // namespace

TEST_SUITE("unit/rack") {
    TEST_CASE("used boards go from a list with dashes, with what is said of them") {
        const std::string text =
            "# The rack.\n"
            "boards:   # left of the door\n"
            "  # top shelf\n"
            "\n"
            "  # bought in May\n"
            "  - name: A1   # chalked twice\n"
            "    wood: 'cherry'\n"
            "    # flat\n"
            "    thickness: 4/4\n"
            "\n"
            "    width: 6 in\n"
            "    length: 4 ft\n"
            "    # so far\n"
            "\n"
            "  # below\n"
            "  - " +
            board_named("A2") +
            "   # the wide one\n"
            "# end\n";
        CHECK(changed(text, used({"A1"})) ==
              "# The rack.\n"
              "boards:   # left of the door\n"
              "  # top shelf\n"
              "\n"
              "\n"
              "  # below\n"
              "  - " +
                  board_named("A2") +
                  "   # the wide one\n"
                  "# end\n");
        CHECK(changed(text, used({"A1", "A2"})) ==
              "# The rack.\nboards:   # left of the door\n  # top shelf\n\n\n# end\n");
        CHECK(changed(text, {}) == text);
        CHECK(changed(text, used({"B7"})) == text);
    }

    TEST_CASE("of boards alike the count goes down, in its own quotes or none") {
        const auto with = [](const std::string& count) {
            return "boards:\n  - name: A1\n    count: " + count +
                   "  # alike\n    wood: cherry\n    thickness: 4/4\n    width: 6 in\n    length: 4 ft\n";
        };
        CHECK(changed(with("13"), used({"A1"})) == with("12"));
        CHECK(changed(with("'2'"), used({"A1"})) == with("1"));
        CHECK(changed(with("2"), used({"A1", "A1"})) == "boards:\n");
        CHECK(changed(with("2"), {{{"A1", 5}}, {}}) == "boards:\n");
        CHECK(changed(with("1"), {{{"A1", 0}}, {}}) == with("1"));
    }

    TEST_CASE("used boards go from a list in brackets") {
        const auto three = [](const std::string& a, const std::string& b, const std::string& c) {
            return "boards: [" + a + b + c + "]\n";
        };
        const std::string text = three(board_named("A1") + ", ", board_named("A2") + ", ", board_named("A3"));
        CHECK(changed(text, used({"A1"})) == three(board_named("A2") + ", ", board_named("A3"), ""));
        CHECK(changed(text, used({"A2"})) == three(board_named("A1") + ", ", board_named("A3"), ""));
        CHECK(changed(text, used({"A3"})) == three(board_named("A1") + ", ", board_named("A2"), ""));
        CHECK(changed(text, used({"A2", "A3"})) == three(board_named("A1"), "", ""));
        CHECK(changed(text, used({"A1", "A2", "A3"})) == "boards: []\n");
        const std::string lines = "boards: [\n  " + board_named("A1") + ",  # wide\n  # narrow\n  " +
                                  board_named("A2") + ",\n  " + board_named("A3") + "\n]\n";
        CHECK(changed(lines, used({"A2"})) ==
              "boards: [\n  " + board_named("A1") + ",  # wide\n  " + board_named("A3") + "\n]\n");
        CHECK(changed(lines, used({"A1"})) ==
              "boards: [\n  # narrow\n  " + board_named("A2") + ",\n  " + board_named("A3") + "\n]\n");
        CHECK(changed(lines, used({"A1", "A2", "A3"})) == "boards: [\n]\n");
        const std::string leading = "boards: [" + board_named("A1") + "\n  , " + board_named("A2") + "]\n";
        CHECK(changed(leading, used({"A1"})) == "boards: [\n  " + board_named("A2") + "]\n");
    }

    TEST_CASE("offcuts begin a list of their own, or go to the end of the one that is there") {
        const std::string boards = "boards:\n  - " + board_named("A1") + "\n  - " + board_named("A2") + "\n";
        const std::string one = "boards:\n  - " + board_named("A1") + "\n";
        const std::string entry = "  - " + offcut("A2-1", "A2") + "\n";
        const RackChange change = used_in_part({"A2"});
        CHECK(changed(boards, change) == one + "offcuts:\n" + entry);
        CHECK(changed(boards + "\nsheets:\n", change) == one + "\noffcuts:\n" + entry + "\nsheets:\n");
        CHECK(changed(boards + "sheets:\n", change) == one + "offcuts:\n" + entry + "sheets:\n");
        for (const std::string empty : {"offcuts:", "offcuts:  # none", "'offcuts' :"}) {
            CHECK(changed(boards + empty + "\nsheets:\n", change) ==
                  one + empty + "\n" + entry + "sheets:\n");
        }
        CHECK(changed(boards + "offcuts: ~\n", change) == one + "offcuts: \n" + entry);
        CHECK(changed(boards + "? offcuts\n", change) == one + "? offcuts\n:\n" + entry);
        CHECK(changed(boards + "offcuts: []\n", change) ==
              one + "offcuts: [\n  " + offcut("A2-1", "A2") + "]\n");
        const std::string old = "offcuts:\n- " + board_named("C1") + "  # old\n\n# end\n";
        CHECK(changed(boards + old, change) == one + "offcuts:\n- " + board_named("C1") + "  # old\n- " +
                                                   offcut("A2-1", "A2") + "\n\n# end\n");
        CHECK(changed("{boards: [" + board_named("A1") + "]}", used_in_part({"A1"})) ==
              "{boards: [], offcuts: [\n  " + offcut("A1-1", "A1") + "]}");
    }

    TEST_CASE("offcuts come into a list in brackets as its other entries stand there") {
        const std::string boards = "boards:\n- " + board_named("A1") + "\n";
        const RackChange change = used_in_part({"A1"});
        const std::string rest = "boards:\n";
        const std::string added = offcut("A1-1", "A1");
        CHECK(changed(boards + "offcuts: [" + board_named("C1") + "]\n", change) ==
              rest + "offcuts: [" + board_named("C1") + ",\n  " + added + "]\n");
        CHECK(changed(boards + "offcuts: [\n    " + board_named("C1") + "  # old\n]\n", change) ==
              rest + "offcuts: [\n    " + board_named("C1") + ",  # old\n    " + added + "\n]\n");
        CHECK(changed(boards + "offcuts: [\n    " + board_named("C1") + ",\n]\n", change) ==
              rest + "offcuts: [\n    " + board_named("C1") + ",\n    " + added + ",\n]\n");
        CHECK(
            changed(boards + "offcuts: [\n    " + board_named("C1") + "\n]\n", used_in_part({"A1", "C1"})) ==
            rest + "offcuts: [\n    " + offcut("C1-1", "C1") + "\n]\n");
    }

    TEST_CASE("line ends stay as they are, and a last one is not put where there was none") {
        const std::string boards = "boards:\r\n- " + board_named("A1") + "\r\n- " + board_named("A2");
        CHECK(changed(boards, used_in_part({"A1"})) ==
              "boards:\r\n- " + board_named("A2") + "\r\noffcuts:\r\n- " + offcut("A1-1", "A1"));
        CHECK(changed(boards + "\r\n", used_in_part({"A2"})) ==
              "boards:\r\n- " + board_named("A1") + "\r\noffcuts:\r\n- " + offcut("A2-1", "A2") + "\r\n");
        CHECK(changed("boards:\n- " + board_named("A1") + "\noffcuts:", used_in_part({"A1"})) ==
              "boards:\noffcuts:\n- " + offcut("A1-1", "A1"));
    }

    TEST_CASE("what is left of bought boards and sheets goes to the lists, or begins them") {
        RackChange change;
        RackBoard board;
        board.species = "cherry";
        board.thickness = inches(1);
        board.length = inches(20);
        board.width = inches(6);
        change.left_of_bought = {board};
        RackSheet sheet;
        sheet.species = "plywood";
        sheet.thickness = 18;
        sheet.length = 600;
        sheet.width = 300;
        change.left_of_bought_sheets = {sheet};
        const std::string in = "{name: new-1, wood: cherry, thickness: 1 in, width: 6 in, length: 20 in}";
        const std::string mm = "{name: new-2, wood: plywood, thickness: 18mm, length: 600mm, width: 300mm}";
        const std::string boards = "boards:\n  - " + board_named("A1") + "\n";
        CHECK(changed(boards, change) == boards + "offcuts:\n  - " + in + "\nsheets:\n  - " + mm + "\n");
        const std::string dealer =
            "dealer:\n  lumber: [{wood: cherry, thickness: 4/4, width: 5 in, length: 8 ft, "
            "price: 7}]\nmoney: crowns\n";
        CHECK(changed("# Nothing yet.\n" + dealer, change) ==
              "# Nothing yet.\noffcuts:\n  - " + in + "\nsheets:\n  - " + mm + "\n" + dealer);
        CHECK(changed("{money: crowns}", change) ==
              "{offcuts: [\n  " + in + "], sheets: [\n  " + mm + "], money: crowns}");
        // A name that is taken is passed over.
        const std::string taken = "offcuts:\n  - " + board_named("new-1") + "\n";
        change.left_of_bought_sheets.clear();
        CHECK(rack_of(changed(taken, change)).boards.at(1).name == "new-2");
    }

    TEST_CASE("an offcut has a name that nothing in the rack has") {
        const std::string text = "boards:\n- " + board_named("A1") + "\n- " + board_named("A1-2") +
                                 "\noffcuts:\n- " + board_named("A1-1") + "\n";
        RackChange change = used({"A1", "A1-1"});
        for (int i = 0; i < 2; ++i) change.left.push_back({"A1", 0, 0, inches(20), inches(6)});
        change.left.push_back({"A1-1", 0, 0, inches(20), inches(6)});
        CHECK(changed(text, change) == "boards:\n- " + board_named("A1-2") + "\noffcuts:\n- " +
                                           offcut("A1-3", "A1") + "\n- " + offcut("A1-4", "A1") + "\n- " +
                                           offcut("A1-1-1", "A1-1") + "\n");
        // At most 40 bytes, and whole characters: here 31 of the name and 33 would be the next.
        const std::string longest = "A" + std::string(31, 'b') + "\xC3\xA4";
        const Rack rack =
            rack_of(changed("boards:\n- " + board_named(longest) + "\n", used_in_part({longest})));
        CHECK(rack.boards.at(0).name == "A" + std::string(31, 'b') + "-1");
        CHECK(rack.boards.at(0).from == longest);
    }

    TEST_CASE("words that YAML would take for something else are quoted") {
        const std::string text =
            "boards:\n- {name: \"null\", wood: cherry, thickness: '3/4\"', width: 6 in, length: 4 ft}\n";
        CHECK(changed(text, used_in_part({"null"})) ==
              "boards:\noffcuts:\n- {name: null-1, from: \"null\", wood: cherry, thickness: \"3/4\\\"\", "
              "width: "
              "6 in, length: 20 in}\n");
    }

    TEST_CASE("lengths are written in the board's unit where that is exact") {
        const auto left = [](const std::string& sizes, const Rational& length) {
            RackChange change = used({"A1"});
            change.left.push_back({"A1", 0, 0, length, inches(4)});
            const std::string text =
                changed("boards:\n- {name: A1, wood: cherry, thickness: 4/4, " + sizes + "}\n", change);
            const std::size_t at = text.rfind(", length: ") + 10;
            return text.substr(at, text.find('}', at) - at);
        };
        const std::string by_tape = "width: 6 in, length: 4 ft";
        const std::string metric = "width: 150mm, length: 1.2 m";
        CHECK(left(by_tape, 254) == "10 in");
        CHECK(left(metric, 254) == "254mm");
        CHECK(left(by_tape, inches(1, 64) + inches(10)) == "10-1/64 in");
        CHECK(left(metric, ratio(2005, 10)) == "200.5mm");
        CHECK(left(by_tape, 200) == "200mm");
        CHECK(left(metric, inches(651, 64)) == "10-11/64 in");
        CHECK(left(by_tape, ratio(601, 3)) == "200-1/3mm");
        CHECK(left("width: 6 in to 150mm, length: 4 ft", 254) == "10 in");
    }

    TEST_CASE("a text that is no rack is left alone") {
        CHECK(rack_after("boards: [", {}, used({"A1"})) == "boards: [");
        CHECK(rack_after("- a\n", {}, used({"A1"})) == "- a\n");
        CHECK(rack_after("", {}, used({"A1"})) == "");
    }
}
