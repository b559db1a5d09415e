// Breaking text into lines that fit, and shrinking what cannot be broken.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "backends/drawing/text_run.hpp"

namespace rodwright::drawing {

// Baseline to baseline, in parts of a capital's height; leaves room for stacked fractions.
inline constexpr double line_pitch = 2.0;

// `text` in lines no wider than `width`: broken at blanks, within a word only where the word alone is wider.
// A line feed in the text starts a new line. At least one line, which may be empty.
std::vector<std::string> wrap(std::string_view text, FontFace face, double height, double width,
                              const Fonts& fonts);

// The pieces that wrap() does not part: words, a whole number with its fraction (`1 5/8"`), a number with its
// unit
// (`12.5 mm`), and how many of a thing (`x 9`).
std::vector<std::string> words_of(std::string_view text);

// The greatest height, at most `height`, at which the text is no wider than `width`.
double height_to_fit(std::string_view text, FontFace face, double height, double width, const Fonts& fonts);

// A line of text that is made smaller if it must be to stay within `width`.
Text fitted(Text text, double width, const Fonts& fonts);

// The height that `lines` of text take up, from the top of the first to the bottom of the last.
double block_height(std::size_t lines, double height);

// Sets the lines one below another, the top of the first at `top`.
void set_lines(Sheet& sheet, const std::vector<std::string>& lines, Text like, double top);

}  // namespace rodwright::drawing
