#include "compiler/data/shop.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "compiler/quantity/quantity.hpp"
#include "compiler/stdlib.hpp"

using namespace rodwright;

namespace {

std::optional<Shop> shop_of(std::string text, Diagnostics& diagnostics, SourceManager& sources) {
    return read_shop(sources, sources.add("shop.yaml", std::move(text)), diagnostics);
}

void check_refused(const std::string& tool, const std::string& message_part) {
    CAPTURE(tool);
    SourceManager sources;
    Diagnostics diagnostics;
    CHECK_FALSE(shop_of("tools:\n  " + tool + "\n", diagnostics, sources));
    REQUIRE(diagnostics.list().size() == 1);
    CHECK(diagnostics.list()[0].code == Code::bad_data);
    CHECK(diagnostics.list()[0].message.find(message_part) != std::string::npos);
}

}  // namespace

TEST_SUITE("unit/data") {
    TEST_CASE("the tools that come with the compiler") {
        const auto& files = stdlib_files();
        const auto file = std::ranges::find(files, "data/shop.yaml", &EmbeddedFile::path);
        REQUIRE(file != files.end());
        SourceManager sources;
        Diagnostics diagnostics;
        const std::optional<Shop> shop = shop_of(file->text, diagnostics, sources);
        REQUIRE(shop);
        for (const char* name :
             {"chisel", "straight_bit", "drill_bit", "dovetail_bit", "groove_cutter", "guide_bush"}) {
            CAPTURE(name);
            CHECK(shop->find(name) != nullptr);
        }
        // A third of 3/4 in is 1/4 in, which is a chisel of the trade (shop practice: 1/4 and 3/8 most used).
        CHECK(shop->nearest("chisel", inches(1, 4)) == inches(1, 4));
    }

    TEST_CASE("nearest size, sorted and exact") {
        SourceManager sources;
        Diagnostics diagnostics;
        const auto shop = shop_of("tools:\n  chisel: [1/2 in, 1/4 in, 10mm, 1/4\"]\n", diagnostics, sources);
        REQUIRE(shop);
        CHECK(shop->find("chisel")->sizes == std::vector<Rational>{inches(1, 4), 10, inches(1, 2)});
        CHECK(shop->nearest("chisel", 1) == inches(1, 4));
        CHECK(shop->nearest("chisel", 1000) == inches(1, 2));
        // Half way between 10 and 12.7 is 11.35: the smaller of two as near.
        CHECK(shop->nearest("chisel", ratio(1135, 100)) == Rational(10));
        CHECK(shop->nearest("chisel", ratio(1136, 100)) == inches(1, 2));
        CHECK_FALSE(shop->nearest("adze", 1));
        // Of one unit only, if the shop has any of it.
        CHECK(shop->nearest("chisel", 10, LengthUnit::inch) == inches(1, 2));
        CHECK(shop->nearest("chisel", inches(1, 4), LengthUnit::millimetre) == Rational(10));
        const auto metric = shop_of("tools:\n  chisel: [6mm, 10mm]\n", diagnostics, sources);
        REQUIRE(metric);
        CHECK(metric->nearest("chisel", inches(1, 4), LengthUnit::inch) == Rational(6));
    }

    TEST_CASE("the smallest size that is large enough") {
        SourceManager sources;
        Diagnostics diagnostics;
        const auto shop =
            shop_of("tools:\n  guide_bush: [3/8 in, 1/2 in, 16mm, 20mm]\n", diagnostics, sources);
        REQUIRE(shop);
        CHECK(shop->at_least("guide_bush", inches(3, 8), LengthUnit::inch) == inches(3, 8));
        CHECK(shop->at_least("guide_bush", inches(13, 32), LengthUnit::inch) == inches(1, 2));
        CHECK(shop->at_least("guide_bush", 10, LengthUnit::millimetre) == Rational(16));
        CHECK_FALSE(shop->at_least("guide_bush", 15, LengthUnit::inch));
        CHECK_FALSE(shop->at_least("adze", 1, LengthUnit::inch));
    }

    TEST_CASE("what is left over for fitting is the shop's") {
        SourceManager sources;
        Diagnostics diagnostics;
        const auto over = [&](const std::string& text) {
            return overlay_shop({}, sources, sources.add("shop.yaml", text), diagnostics);
        };
        const auto shop = over("fitting: {length: 10mm, width: 2mm, thickness: 1/32 in}\n");
        REQUIRE(shop);
        CHECK(shop->fitting().length == 10);
        CHECK(shop->fitting().width == 2);
        CHECK(shop->fitting().thickness == inches(1, 32));
        CHECK_FALSE(over("fitting: {length: 10mm}\n"));
        CHECK_FALSE(over("fitting: {length: 10, width: 2mm, thickness: 1mm}\n"));
    }

    TEST_CASE("bad tools are refused") {
        check_refused("chisel: [6]", "a length above zero");
        check_refused("chisel: [0mm]", "a length above zero");
        check_refused("chisel: [wide]", "not a number");
        check_refused("chisel: []", "no sizes");
        check_refused("chisel: 6mm", "a list is wanted");
    }
}
