#include <doctest/doctest.h>

#include <algorithm>

#include "tests/support/design.hpp"
#include "tests/support/examples.hpp"
#include "tests/support/piece_text.hpp"
#include "tests/unit/property/rewrite.hpp"

using namespace rodwright;
using namespace rodwright::testing;

TEST_SUITE_BEGIN("unit/property");

namespace {

constexpr unsigned seeds = 8;

const std::vector<NodeKind> lines = {NodeKind::equation, NodeKind::let};

// Parts by name with all that is done to them, whatever the order and the kinds.
std::vector<std::string> parts_of(const Piece& piece) {
    std::vector<std::string> result;
    for (const Part& part : piece.parts) {
        std::string text = part.name + " " + piece[part.kind].name;
        for (const Axis axis : all_axes) {
            text += " " + part.body.low[axis].get_str() + " " + part.body.high[axis].get_str();
        }
        for (const std::string& feature : placed_features(piece, part)) text += "\n  " + feature;
        result.push_back(text);
    }
    std::sort(result.begin(), result.end());
    return result;
}

// Sticks side by side, each placed off the one before in one of several ways, and where they must stand.
struct Chain {
    std::string text;
    std::vector<Rational> lefts;
    std::vector<Rational> rights;
};

std::string one_way(unsigned way, const std::string& before, long gap, long size) {
    const std::string g = std::to_string(gap) + "/16\"";
    const std::string s = std::to_string(size) + "mm";
    switch (way) {
        case 0:
            return "left = " + before + " + " + g + "; wide = " + s;
        case 1:
            return "right = left + " + s + "; left - " + g + " = " + before;
        case 2:
            return "left + right = 2 * " + before + " + 2 * " + g + " + " + s + "; right - left = " + s;
        default:
            return "wide = " + s + "; right = " + before + " + " + g + " + wide";
    }
}

Chain chain(std::mt19937& random, std::size_t count) {
    Chain result;
    Rational at = 0;
    std::string before = "piece.left";
    for (std::size_t i = 0; i < count; ++i) {
        const auto gap = static_cast<long>(random() % 40);
        const auto size = static_cast<long>(random() % 30 + 1);
        const std::string name = "p" + std::to_string(i);
        result.text += "part " + name +
                       " { grain wide; front = piece.front; deep = 9mm; bottom = piece.bottom; " +
                       one_way(random() % 4, before, gap, size) + "; tall = 9mm }\n";
        at += ratio(gap * 127, 80);  // sixteenths of an inch
        result.lefts.push_back(at);
        at += size;
        result.rights.push_back(at);
        before = name + ".right";
    }
    return result;
}

}  // namespace

TEST_CASE("the examples do not depend on the order of their lines") {
    for (const std::string& name : example_names()) {
        const std::string text = example_text(name);
        const std::string expected = piece_text(compile_text(text).piece());
        for (unsigned seed = 1; seed <= seeds; ++seed) {
            CAPTURE(name);
            CAPTURE(seed);
            std::mt19937 random(seed);
            const std::string other = shuffled(text, lines, random);
            REQUIRE(other != text);
            CHECK(piece_text(compile_text(other).piece()) == expected);
        }
    }
}

TEST_CASE("nor do their parts on the order of parts and joints") {
    for (const std::string& name : example_names()) {
        const std::string text = example_text(name);
        const std::vector<std::string> expected = parts_of(compile_text(text).piece());
        for (unsigned seed = 1; seed <= seeds; ++seed) {
            CAPTURE(name);
            CAPTURE(seed);
            std::mt19937 random(seed);
            const std::string other =
                shuffled(text, {NodeKind::part, NodeKind::join, NodeKind::fasten, NodeKind::space}, random);
            REQUIRE(other != text);
            CHECK(parts_of(compile_text(other).piece()) == expected);
        }
    }
}

TEST_CASE("chains of parts stand where sums say, in any order of lines and parts") {
    for (unsigned seed = 1; seed <= 12; ++seed) {
        CAPTURE(seed);
        std::mt19937 random(seed);
        const Chain made = chain(random, 5 + seed * 3);
        const std::string piece = "piece \"Chain\" { wide = 9m; deep = 9m; tall = 9m\n" + made.text + "}\n";
        for (const std::string& text : {piece, shuffled(shuffled(piece, {NodeKind::part}, random),
                                                        {NodeKind::equation, NodeKind::grain}, random)}) {
            const CompiledDesign design = compile_text(text);
            for (std::size_t i = 0; i < made.lefts.size(); ++i) {
                CHECK(design.at("p" + std::to_string(i), Face::left) == made.lefts[i]);
                CHECK(design.at("p" + std::to_string(i), Face::right) == made.rights[i]);
            }
        }
    }
}

TEST_SUITE_END();
