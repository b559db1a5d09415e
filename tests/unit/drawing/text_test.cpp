#include <doctest/doctest.h>

#include "backends/drawing/text_layout.hpp"
#include "tests/unit/drawing/test_fonts.hpp"

using namespace rodwright;
using namespace rodwright::drawing;

static std::string shown(std::string_view text) {
    std::string all;
    for (const TextRun& run : runs_of(text)) {
        all += "[" + run.text + (run.stacked() ? "|" + run.denominator : "") + "]";
    }
    return all;
}

TEST_SUITE("unit/drawing") {
    TEST_CASE("fractions are stacked, other slashes are not") {
        CHECK(shown("1 5/8\"") == "[1][5|8][\"]");
        CHECK(shown("1-5/8\" x 3/4\"") == "[1][5|8][\" x ][3|4][\"]");
        CHECK(shown("~23/32\"") == "[~][23|32][\"]");
        CHECK(shown("9/30/2024") == "[9/30/2024]");
        CHECK(shown("and/or") == "[and/or]");
        CHECK(shown("M6/8") == "[M6/8]");
        CHECK(shown("at 3/4.") == "[at ][3|4][.]");
        CHECK(shown("") == "");
    }

    TEST_CASE("a fraction is narrower than its characters in a row, and taller") {
        const SetText set = set_text("5/8", FontFace::regular, 2.5, fonts());
        CHECK(set.width < fonts().plain_width("5/8", FontFace::regular, 2.5));
        CHECK(set.above > reach_above * 2.5);
        CHECK(set.runs.size() == 2);
        CHECK(set.bars.size() == 1);
        // Numerator over bar over denominator, with air between.
        CHECK(set.runs[0].offset.y > set.bars[0].first.y);
        CHECK(set.runs[1].offset.y + set.runs[1].height < set.bars[0].first.y);
    }

    TEST_CASE("the box of a text turns with it") {
        const Text across{"length", FontFace::regular, 2.5, {100, 50}, Align::middle, false};
        Text upward = across;
        upward.upward = true;
        const Rect a = text_box(across, fonts());
        const Rect b = text_box(upward, fonts());
        CHECK(a.width() == doctest::Approx(b.height()));
        CHECK(a.height() == doctest::Approx(b.width()));
        CHECK(a.centre().x == doctest::Approx(100));
        CHECK(b.centre().y == doctest::Approx(50));
        CHECK(b.right - 100 ==
              doctest::Approx(reach_below * 2.5));  // descenders to the right of the baseline
    }

    TEST_CASE("wrapped lines fit, keep every word and keep a number with its fraction") {
        const std::string text =
            "Cut the tenon 1 1/8\" long and leave 3/16\" at each shoulder of the side apron";
        for (const double width : {20.0, 37.0, 90.0}) {
            CAPTURE(width);
            std::string joined;
            for (const std::string& line : wrap(text, FontFace::regular, 2.5, width, fonts())) {
                CHECK(text_width(line, FontFace::regular, 2.5, fonts()) <= width + 1e-6);
                CHECK(!line.ends_with(" 1"));
                joined += (joined.empty() ? "" : " ") + line;
            }
            CHECK(joined == text);
        }
    }

    TEST_CASE("a word wider than the line is parted, a line feed is kept") {
        const auto parted = wrap("Donaudampfschiff", FontFace::regular, 2.5, 9, fonts());
        CHECK(parted.size() > 2);
        for (const std::string& line : parted) CHECK(text_width(line, FontFace::regular, 2.5, fonts()) <= 9);
        CHECK(wrap("a\nb", FontFace::regular, 2.5, 50, fonts()) == std::vector<std::string>{"a", "b"});
        CHECK(wrap("", FontFace::regular, 2.5, 50, fonts()) == std::vector<std::string>{""});
    }

    TEST_CASE("a line that is too long is set smaller, never larger") {
        const double height = height_to_fit("a very long name of a part", FontFace::bold, 5, 20, fonts());
        CHECK(height < 5);
        CHECK(text_width("a very long name of a part", FontFace::bold, height, fonts()) ==
              doctest::Approx(20));
        CHECK(height_to_fit("leg", FontFace::bold, 5, 100, fonts()) == 5);
    }

    TEST_CASE("a missing font is an error that names the file and the package") {
        Diagnostics diagnostics;
        CHECK(!Fonts::load("/nowhere", diagnostics).has_value());
        REQUIRE(diagnostics.list().size() >= 1);
        CHECK(diagnostics.list()[0].code == Code::cannot_draw);
        CHECK(diagnostics.list()[0].message.find("/nowhere/DejaVuSans.ttf") != std::string::npos);
        CHECK(diagnostics.list()[0].help.find("fonts-dejavu-core") != std::string::npos);
    }

    TEST_CASE("bytes that are no font are refused, cut-off fonts do not read past their end") {
        CHECK(!FontMetrics::read("").has_value());
        CHECK(!FontMetrics::read(std::string(4000, '\x7f')).has_value());
        // A header of 12 bytes, and one entry: a table of four bytes at byte 28, where the file ends.
        const std::string entry_past_end("\0\1\0\0\0\1\0\0\0\0\0\0cmap\0\0\0\0\0\0\0\x1c\0\0\0\4", 28);
        CHECK(!FontMetrics::read(entry_past_end).has_value());
    }
}
