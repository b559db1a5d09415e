#include "backends/drawing/text_layout.hpp"

#include <algorithm>

namespace rodwright::drawing {

namespace {

// Sets words one after another; a blank in "1 5/8" is no place to break.
class LineBreaker {
  public:
    LineBreaker(FontFace face, double height, double width, const Fonts& fonts)
        : face_(face), height_(height), width_(width), fonts_(fonts) {}

    void add(std::string_view word) {
        const std::string longer = line_.empty() ? std::string(word) : line_ + " " + std::string(word);
        if (fits(longer)) {
            line_ = longer;
            return;
        }
        if (!line_.empty()) end_line();
        if (fits(word)) {
            line_ = word;
        } else {
            add_in_pieces(word);
        }
    }
    void end_line() {
        lines_.push_back(std::move(line_));
        line_.clear();
    }
    std::vector<std::string> take() { return std::move(lines_); }

  private:
    bool fits(std::string_view text) const {
        return text_width(text, face_, height_, fonts_) <= width_ + 1e-9;
    }

    void add_in_pieces(std::string_view word) {
        for (std::size_t at = 0; at < word.size();) {
            std::size_t end = at + 1;
            while (end < word.size() && (static_cast<unsigned char>(word[end]) & 0xc0U) == 0x80U) ++end;
            const std::string_view character = word.substr(at, end - at);
            if (!line_.empty() && !fits(line_ + std::string(character))) end_line();
            line_ += character;
            at = end;
        }
    }

    FontFace face_;
    double height_;
    double width_;
    const Fonts& fonts_;
    std::string line_;
    std::vector<std::string> lines_;
};

// With what may stand before it: `12`, `[~3`.
bool is_number(std::string_view word) {
    word.remove_prefix(std::min(word.find_first_not_of("([~-"), word.size()));
    return !word.empty() &&
           std::all_of(word.begin(), word.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool is_fraction(std::string_view word) {
    const std::vector<TextRun> runs = runs_of(word);
    return !runs.empty() && runs[0].stacked();
}

bool ends_in_digit(std::string_view word) {
    return !word.empty() && word.back() >= '0' && word.back() <= '9';
}

// `1` and `5/8"`, `12.5` and `mm`, `x` and `9`.
bool belong_together(std::string_view word, std::string_view next) {
    return word == "x" || (is_number(word) && is_fraction(next)) ||
           (ends_in_digit(word) && next.starts_with("mm"));
}

}  // namespace

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    std::string_view before;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
        const std::string_view word = text.substr(at, end - at);
        if (!words.empty() && !word.empty() && belong_together(before, word)) {
            words.back() += " " + std::string(word);
        } else if (!word.empty()) {
            words.emplace_back(word);
        }
        if (!word.empty()) before = word;
        at = end + 1;
    }
    return words;
}

std::vector<std::string> wrap(std::string_view text, FontFace face, double height, double width,
                              const Fonts& fonts) {
    LineBreaker breaker(face, height, width, fonts);
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        for (const std::string& word : words_of(text.substr(at, end - at))) breaker.add(word);
        breaker.end_line();
        at = end + 1;
    }
    return breaker.take();
}

double height_to_fit(std::string_view text, FontFace face, double height, double width, const Fonts& fonts) {
    const double wanted = text_width(text, face, height, fonts);
    return wanted <= width ? height : height * width / wanted;
}

Text fitted(Text text, double width, const Fonts& fonts) {
    text.height = height_to_fit(text.text, text.face, text.height, width, fonts);
    return text;
}

double block_height(std::size_t lines, double height) {
    if (lines == 0) return 0;
    return height * (line_pitch * static_cast<double>(lines - 1) + reach_above + reach_below);
}

void set_lines(Sheet& sheet, const std::vector<std::string>& lines, Text like, double top) {
    double baseline = top - reach_above * like.height;
    for (const std::string& line : lines) {
        like.text = line;
        like.at.y = baseline;
        sheet.text(like);
        baseline -= line_pitch * like.height;
    }
}

}  // namespace rodwright::drawing
