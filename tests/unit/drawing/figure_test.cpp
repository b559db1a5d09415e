#include "backends/packet/figure.hpp"

#include <doctest/doctest.h>

#include "backends/drawing/sheet_format.hpp"
#include "backends/drawing/title_block.hpp"

using namespace rodwright;
using namespace rodwright::packet;

static const LengthStyle inch{LengthUnit::inch, ratio(1, 32)};
static const LengthStyle metric{LengthUnit::millimetre, ratio(1, 2)};

TEST_SUITE("unit/drawing") {
    TEST_CASE("a figure in one unit, and with the other beside it") {
        // 42 in are 1066.8 mm; 19 mm are 0.748 in, nearest to 24/32.
        const Rational length = inches(42);
        CHECK(figure(length, inch) == "42\"");
        CHECK(figure(length, {inch, usual_style(LengthUnit::millimetre)}) == "42\" [1066.8]");
        CHECK(figure(Rational(19), {metric, usual_style(LengthUnit::inch)}) == "19 [~3/4\"]");
        CHECK(figure(Rational(0), {metric, usual_style(LengthUnit::inch)}) == "0");
    }

    TEST_CASE("a quantity that reads alike in both units is written once") {
        const FigureStyle both{inch, usual_style(LengthUnit::millimetre)};
        CHECK(quantity_figure(Quantity::number(3), both) == "3");
        CHECK(quantity_figure(Quantity::length(inches(2)), both) == "2\" [50.8 mm]");
    }

    TEST_CASE("fields of the title block without a value are left out") {
        Diagnostics diagnostics;
        const auto fonts = drawing::Fonts::load(diagnostics);
        REQUIRE(fonts.has_value());
        const auto texts = [&](const drawing::TitleBlock& block) {
            drawing::Sheet sheet = drawing::framed_sheet(*drawing::find_sheet_format("a4"), "");
            draw_title_block(sheet, block, *fonts);
            std::string found;
            for (const drawing::Item& item : sheet.items) {
                if (const auto* text = std::get_if<drawing::Text>(&item)) found += "{" + text->text + "}";
            }
            return found;
        };
        drawing::TitleBlock block;
        block.title = "Tray";
        const std::string bare = texts(block);
        CHECK(bare.find("{title}{Tray}") != std::string::npos);
        for (const char* label : {"{number}", "{revision}", "{date}", "{scale}", "{-}"}) {
            CAPTURE(label);
            CHECK(bare.find(label) == std::string::npos);
        }
        block.number = "QS-12";
        block.revision = "B";
        const std::string full = texts(block);
        CHECK(full.find("{number}{QS-12}") != std::string::npos);
        CHECK(full.find("{revision}{B}") != std::string::npos);
    }
}
