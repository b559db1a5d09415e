#include "backends/drawing/text_run.hpp"

#include <algorithm>

namespace rodwright::drawing {

namespace {

// Of a stacked fraction, in parts of a capital's height: its numerals, the bar's place, the space around.
constexpr double numeral = 0.74;
constexpr double bar_height = 0.5;
constexpr double bar_clear = 0.14;
constexpr double side_space = 0.12;

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool blocks_fraction(char c) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    return is_digit(c) || letter || c == '/' || c == '.' || (static_cast<unsigned char>(c) & 0x80U) != 0;
}

std::size_t digits_end(std::string_view text, std::size_t from) {
    while (from < text.size() && is_digit(text[from])) ++from;
    return from;
}

struct Found {
    std::size_t begin = 0;
    std::size_t slash = 0;
    std::size_t end = 0;
};

// The fraction that starts at `at`, where a digit stands.
bool fraction_at(std::string_view text, std::size_t at, Found& found) {
    if (at > 0 && blocks_fraction(text[at - 1])) return false;
    found.begin = at;
    found.slash = digits_end(text, at);
    if (found.slash >= text.size() || text[found.slash] != '/') return false;
    found.end = digits_end(text, found.slash + 1);
    const bool denominator = found.end > found.slash + 1;
    return denominator &&
           (found.end == text.size() || !blocks_fraction(text[found.end]) || text[found.end] == '.');
}

bool find_fraction(std::string_view text, std::size_t from, Found& found) {
    for (std::size_t at = from; at < text.size(); ++at) {
        if (is_digit(text[at]) && fraction_at(text, at, found)) return true;
    }
    return false;
}

// The blank or hyphen between a whole number and its fraction is not set: `1 5/8` is one number.
std::string_view without_joint(std::string_view before) {
    const std::size_t size = before.size();
    const bool joined =
        size >= 2 && (before[size - 1] == ' ' || before[size - 1] == '-') && is_digit(before[size - 2]);
    return joined ? before.substr(0, size - 1) : before;
}

void place_fraction(const TextRun& run, FontFace face, double height, const Fonts& fonts, SetText& set) {
    const double small = numeral * height;
    const double over = fonts.plain_width(run.text, face, small);
    const double under = fonts.plain_width(run.denominator, face, small);
    const double width = std::max(over, under) + 2 * side_space * height;
    const double bar = bar_height * height;
    const double clear = bar_clear * height;
    const double middle = set.width + width / 2;
    set.runs.push_back({run.text, small, {middle - over / 2, bar + clear}});
    set.runs.push_back({run.denominator, small, {middle - under / 2, bar - clear - small}});
    set.bars.push_back(
        {{set.width + side_space * height / 2, bar}, {set.width + width - side_space * height / 2, bar}});
    set.width += width;
    set.above = std::max(set.above, bar + clear + small);
    set.below = std::max(set.below, small + clear - bar);
}

}  // namespace

std::vector<TextRun> runs_of(std::string_view text) {
    std::vector<TextRun> runs;
    std::size_t done = 0;
    Found found;
    while (find_fraction(text, done, found)) {
        const std::string_view before = without_joint(text.substr(done, found.begin - done));
        if (!before.empty()) runs.push_back({std::string(before), ""});
        runs.push_back({std::string(text.substr(found.begin, found.slash - found.begin)),
                        std::string(text.substr(found.slash + 1, found.end - found.slash - 1))});
        done = found.end;
    }
    if (done < text.size()) runs.push_back({std::string(text.substr(done)), ""});
    return runs;
}

SetText set_text(std::string_view text, FontFace face, double height, const Fonts& fonts) {
    SetText set;
    set.above = reach_above * height;
    set.below = reach_below * height;
    for (const TextRun& run : runs_of(text)) {
        if (run.stacked()) {
            place_fraction(run, face, height, fonts, set);
        } else {
            set.runs.push_back({run.text, height, {set.width, 0}});
            set.width += fonts.plain_width(run.text, face, height);
        }
    }
    return set;
}

double text_width(std::string_view text, FontFace face, double height, const Fonts& fonts) {
    return set_text(text, face, height, fonts).width;
}

Rect text_box(const Text& text, const Fonts& fonts) {
    const SetText set = set_text(text.text, text.face, text.height, fonts);
    const double before = text.align == Align::left     ? 0
                          : text.align == Align::middle ? set.width / 2
                                                        : set.width;
    const double after = set.width - before;
    if (text.upward) {
        return {text.at.x - set.above, text.at.y - before, text.at.x + set.below, text.at.y + after};
    }
    return {text.at.x - before, text.at.y - set.below, text.at.x + after, text.at.y + set.above};
}

}  // namespace rodwright::drawing
