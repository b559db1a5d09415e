#include "backends/drawing/svg/svg_writer.hpp"

#include <doctest/doctest.h>

#include <numbers>

#include "backends/drawing/sheet_format.hpp"

using namespace rodwright;
using namespace rodwright::drawing;

static std::string svg_of(const Sheet& sheet) {
    Diagnostics diagnostics;
    const auto fonts = Fonts::load(diagnostics);
    REQUIRE(fonts.has_value());
    return write_svg(sheet, {0, 0, 100, 50}, "what it shows", *fonts);
}

static bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("an SVG is in millimetres from the top, with title, description and groups") {
        Sheet sheet;
        sheet.title = "Leg <A>";
        sheet.items.emplace_back(GroupStart{"part A, \"leg\"", "table.rod:4"});
        sheet.line(LineRole::visible, {10, 10}, {20.5, 40});
        sheet.items.emplace_back(GroupEnd{});
        const std::string svg = svg_of(sheet);
        CHECK(has(svg, "width=\"100mm\" height=\"50mm\" viewBox=\"0 0 100 50\""));
        CHECK(has(svg, "<title id=\"title\">Leg &lt;A&gt;</title>"));
        CHECK(has(svg, "<desc id=\"desc\">what it shows</desc>"));
        CHECK(has(svg,
                  "<g><title>part A, &quot;leg&quot;</title>\n<desc>table.rod:4</desc>\n"
                  "<path d=\"M10 40L20.5 10\" class=\"visible\"/>\n</g>"));
    }

    TEST_CASE("arcs stay arcs: a quarter counter-clockwise, a whole circle in two") {
        Sheet sheet;
        sheet.items.emplace_back(Arc{LineRole::visible, {50, 25}, 10, 0, std::numbers::pi / 2});
        sheet.circle(LineRole::visible, {50, 25}, 5);
        const std::string svg = svg_of(sheet);
        CHECK(has(svg, "M60 25A10 10 0 0 0 50 15"));
        CHECK(has(svg, "M55 25A5 5 0 0 0 45 25A5 5 0 0 0 55 25"));
    }

    TEST_CASE("a stacked fraction is told whole to who cannot see it") {
        Sheet sheet;
        sheet.text({"1 5/8\"", FontFace::regular, 2.5, {10, 10}, Align::left, false});
        CHECK(has(svg_of(sheet), "aria-label=\"1 5/8&quot;\""));
    }
}
