// Text as it is set: fractions are stacked, numerator over denominator with a bar, as the trade writes them.
//
// `1 5/8"` becomes the runs `1`, 5 over 8, `"`. A fraction is digits, a slash, digits with no digit, letter,
// slash or point on either side, so that `9/30/2024` and `and/or` stay as they are.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "backends/drawing/fonts.hpp"

namespace rodwright::drawing {

struct TextRun {
    std::string text;         // plain text, or the numerator
    std::string denominator;  // empty: plain
    bool stacked() const { return !denominator.empty(); }
};

std::vector<TextRun> runs_of(std::string_view text);

// A piece of text as a font draws it, without fractions, `offset` from the start of the whole text's
// baseline.
struct PlacedRun {
    std::string text;
    double height = 0;  // of a capital
    Point offset;
};

// Where every run stands in a text whose capitals are `height` high, and the bars of its fractions (left end
// and right end), all before turning.
struct SetText {
    std::vector<PlacedRun> runs;
    std::vector<std::pair<Point, Point>> bars;
    double width = 0;
    double above = 0;  // how far it reaches over the baseline
    double below = 0;
};
SetText set_text(std::string_view text, FontFace face, double height, const Fonts& fonts);

double text_width(std::string_view text, FontFace face, double height, const Fonts& fonts);

// The box around a text on the sheet, turned as it is.
Rect text_box(const Text& text, const Fonts& fonts);

}  // namespace rodwright::drawing
