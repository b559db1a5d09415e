// A changed file reads back as the changed rack, whatever the style of the file.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <random>

#include "compiler/stock/rack/rack_after.hpp"
#include "tests/unit/rack/rack_text.hpp"
#include "tests/unit/rack/random_rack.hpp"

using namespace rodwright;
using namespace rodwright::testing;

namespace {

// All of an entry but its place, to compare. Warp and sapwood of offcuts may be rounded: the one has a test
// of its own, the other is compared by itself.
std::string told(const std::vector<WoodDefect>& defects) {
    std::string text;
    for (const WoodDefect& defect : defects) {
        text += fmt::format("; {} {} {} {} {}", to_text(defect.from_end), to_text(defect.from_edge),
                            to_text(defect.length), to_text(defect.width), defect.note);
    }
    return text;
}

std::string told(const RackBoard& board) {
    std::string text =
        fmt::format("{} {} {} {} {}", board.name, board.species, board.cut, board.surfaced, board.offcut);
    for (const Rational& size : {board.thickness, board.length, board.width, board.far_width, board.checks,
                                 board.far_checks, board.moisture.value_or(-1), board.price.value_or(-1)}) {
        text += " " + to_text(size);
    }
    return text + fmt::format(" {} {} {}", board.count, board.from, board.note) + told(board.defects);
}

std::string told(const RackSheet& sheet) {
    std::string text =
        fmt::format("{} {} {} {}", sheet.name, sheet.species, static_cast<int>(sheet.grain), sheet.offcut);
    for (const Rational& size :
         {sheet.thickness, sheet.length, sheet.width, sheet.trim, sheet.price.value_or(-1)}) {
        text += " " + to_text(size);
    }
    return text + fmt::format(" {} {} {}", sheet.count, sheet.from, sheet.note) + told(sheet.defects);
}

template <typename Entry>
std::vector<std::string> all_told(const std::vector<Entry>& entries) {
    std::vector<std::string> all;
    for (const Entry& entry : entries) all.push_back(told(entry));
    return all;
}

// The stretch of a defect, checks or trim that lies between two saw cuts.
std::pair<Rational, Rational> between(const Rational& begin, const Rational& end, const Rational& cut,
                                      const Rational& other_cut) {
    const Rational first = begin < cut ? cut : begin;
    const Rational last = end > other_cut ? other_cut : end;
    if (first >= last) return {0, 0};
    return {first - cut, last - first};
}

std::vector<WoodDefect> defects_left(const std::vector<WoodDefect>& defects, const RackChange::Left& left) {
    std::vector<WoodDefect> found;
    for (const WoodDefect& defect : defects) {
        const auto along = between(defect.from_end, defect.from_end + defect.length, left.from_end,
                                   left.from_end + left.length);
        const auto across = between(defect.from_edge, defect.from_edge + defect.width, left.from_edge,
                                    left.from_edge + left.width);
        if (along.second > 0 && across.second > 0) {
            found.push_back({along.first, across.first, along.second, across.second, defect.note});
        }
    }
    return found;
}

RackBoard board_left(const RackBoard& of, const RackChange::Left& left, const std::string& name) {
    RackBoard board;
    board.name = name;
    board.species = of.species;
    board.cut = of.cut;
    board.surfaced = of.surfaced;
    board.thickness = of.thickness;
    board.moisture = of.moisture;
    board.length = left.length;
    board.width = board.far_width = left.width;
    const Rational end = left.from_end + left.length;
    board.checks = between(0, of.checks, left.from_end, end).second;
    board.far_checks = between(of.length - of.far_checks, of.length, left.from_end, end).second;
    // Widest at whichever end of the offcut the board is narrower.
    for (const Rational& along : {left.from_end, end}) {
        const Rational width = of.width + (of.far_width - of.width) * along / of.length;
        const Rational inside = left.from_edge + left.width - (width - of.sapwood);
        if (of.sapwood > 0 && inside > board.sapwood) board.sapwood = inside;
    }
    if (board.sapwood > left.width) board.sapwood = left.width;
    board.defects = defects_left(of.defects, left);
    board.offcut = true;
    board.from = of.name;
    return board;
}

RackSheet sheet_left(const RackSheet& of, const RackChange::Left& left, const std::string& name) {
    RackSheet sheet;
    sheet.name = name;
    sheet.species = of.species;
    sheet.thickness = of.thickness;
    sheet.grain = of.grain;
    sheet.length = left.length;
    sheet.width = left.width;
    const bool factory_edge = left.from_end < of.trim || left.from_edge < of.trim ||
                              of.length - left.from_end - left.length < of.trim ||
                              of.width - left.from_edge - left.width < of.trim;
    if (factory_edge) sheet.trim = of.trim;
    sheet.defects = defects_left(of.defects, left);
    sheet.offcut = true;
    sheet.from = of.name;
    return sheet;
}

// A rectangle on the grid of sixteenths, or of thirds of a millimetre, large enough for a board.
RackChange::Left random_left(std::mt19937& random, const std::string& of, const Rational& length,
                             const Rational& width) {
    const Rational grid = random() % 2 == 0 ? ratio(127, 80) : ratio(1, 3);
    const auto part = [&](const Rational& whole, long of_100) {
        return Rational(floor(whole * of_100 / 100 / grid) * grid);
    };
    const auto percent = [&](long least, long most) {
        return least + static_cast<long>(random() % static_cast<unsigned long>(most - least + 1));
    };
    const Rational from_end = part(length, percent(0, 30));
    const Rational from_edge = part(width, percent(0, 30));
    // More than the checks and the trims are wide.
    return {of, from_end, from_edge, part(length, percent(40, 70)), part(width, percent(40, 70))};
}

template <typename Entry>
void change_randomly(std::mt19937& random, const std::vector<Entry>& entries, RackChange& change) {
    for (const Entry& entry : entries) {
        const auto kind = random() % 4;
        if (kind < 2) change.used.push_back({entry.name, 1 + static_cast<int>(random() % 3)});
        for (auto i = random() % 3; kind == 1 && i > 0; --i) {
            change.left.push_back(random_left(random, entry.name, entry.length, entry.width));
        }
    }
}

template <typename Entry>
std::vector<Entry> used_up(std::vector<Entry> entries, const RackChange& change) {
    for (const RackChange::Used& used : change.used) {
        for (Entry& entry : entries) {
            if (entry.name == used.name) entry.count -= used.count;
        }
    }
    std::erase_if(entries, [](const Entry& entry) { return entry.count <= 0; });
    return entries;
}

Rack changed(const Rack& rack, const RackChange& change) {
    Rack after = rack;
    after.boards = used_up(rack.boards, change);
    after.sheets = used_up(rack.sheets, change);
    std::map<std::string, int> numbers;
    for (const RackChange::Left& left : change.left) {
        const std::string name = left.of + "-" + std::to_string(++numbers[left.of]);
        for (const RackBoard& board : rack.boards) {
            if (board.name == left.of) after.boards.push_back(board_left(board, left, name));
        }
        for (const RackSheet& sheet : rack.sheets) {
            if (sheet.name == left.of) after.sheets.push_back(sheet_left(sheet, left, name));
        }
    }
    return after;
}

std::string described(const RackChange& change) {
    std::string text;
    for (const RackChange::Used& used : change.used)
        text += fmt::format("used {} {}\n", used.name, used.count);
    for (const RackChange::Left& left : change.left) text += fmt::format("left of {}\n", left.of);
    return text;
}

// How many there are of an entry, or none.
int count_of(const Rack& rack, const std::string& name) {
    int count = 0;
    for (const RackBoard& board : rack.boards) count += board.name == name ? board.count : 0;
    for (const RackSheet& sheet : rack.sheets) count += sheet.name == name ? sheet.count : 0;
    return count;
}

// Each stretch that stays, with no count to be changed, stands in the changed text, in order. In brackets a
// comma may come behind an entry.
void check_rest_stays(const RandomRack& random, const Rack& before, const Rack& after,
                      const std::string& text) {
    std::size_t at = 0;
    for (const auto& [stretch, owner] : random.stretches) {
        const bool same = owner.empty() ||
                          (count_of(after, owner) == count_of(before, owner) && count_of(after, owner) > 0);
        if (!same) continue;
        std::string wanted = stretch;
        if (text.find(wanted, at) == std::string::npos && !owner.empty()) {
            wanted.erase(std::min(wanted.rfind('}'), wanted.size() - 1) + 1);
        }
        const std::size_t found = text.find(wanted, at);
        CAPTURE(wanted);
        REQUIRE(found != std::string::npos);
        at = found + wanted.size();
    }
}

}  // namespace

TEST_SUITE("unit/rack") {
    TEST_CASE("a changed file of any style reads back as the changed rack") {
        std::mt19937 random(20261125);
        std::size_t offcuts = 0;
        for (int run = 0; run < 3000; ++run) {
            const RandomRack file = random_rack(random);
            const std::string text = file.text();
            const Rack rack = rack_of(text);
            RackChange change;
            change_randomly(random, rack.boards, change);
            change_randomly(random, rack.sheets, change);
            const std::string after = rack_after(text, rack, change);
            CAPTURE(run);
            CAPTURE(text);
            CAPTURE(described(change));
            const Rack read = rack_of(after);
            const Rack expected = changed(rack, change);
            REQUIRE(all_told(read.boards) == all_told(expected.boards));
            for (std::size_t i = 0; i < read.boards.size(); ++i) {
                const Rational more = read.boards[i].sapwood - expected.boards[i].sapwood;
                REQUIRE(more >= 0);
                REQUIRE(more < ratio(1, 2));
            }
            REQUIRE(all_told(read.sheets) == all_told(expected.sheets));
            REQUIRE(read.lumber.size() == rack.lumber.size());
            if (file.in_lines) check_rest_stays(file, rack, read, after);
            if (change.used.empty() && change.left.empty()) REQUIRE(after == text);
            offcuts += change.left.size();
        }
        CHECK(offcuts > 1000);
    }
}
