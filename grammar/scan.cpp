#include "grammar/scan.hpp"

#include <algorithm>
#include <array>

namespace rodwright {
namespace {

constexpr std::array<std::string_view, 13> reserved_words = {
    "piece", "joint", "shape", "assembly", "part", "if", "then", "else", "and", "or", "not", "none", "given"};

constexpr std::array unit_words_and_marks = {
#define RODWRIGHT_UNIT(word, ...) std::string_view(word),
#define RODWRIGHT_PERCENT(word, ...) std::string_view(word),
#define RODWRIGHT_TEMPERATURE(word, ...) std::string_view(word),
#define RODWRIGHT_CURRENCY(word, ...) std::string_view(word),
#include "compiler/quantity/units.def"
};

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

}  // namespace

bool is_word_start(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

bool is_word_part(char c) {
    return is_word_start(c) || is_digit(c) || c == '_';
}

std::size_t word_length(std::string_view text) {
    if (text.empty() || !is_word_start(text.front())) return 0;
    std::size_t length = 1;
    while (length < text.size() && is_word_part(text[length])) ++length;
    return length;
}

bool is_reserved(std::string_view word) {
    if (word == "nearest") return true;
    return word.size() <= 8 && std::ranges::find(reserved_words, word) != reserved_words.end();
}

bool is_unit_word(std::string_view word) {
    return word != "'" && word != "\"" &&
           std::ranges::find(unit_words_and_marks, word) != unit_words_and_marks.end();
}

std::size_t opaque_length(std::string_view text, char before) {
    if (text.starts_with("--")) return std::min(text.find('\n'), text.size());
    if (!text.starts_with('"') || is_digit(before)) return 0;
    const std::size_t end = text.find_first_of("\"\n", 1);
    if (end == std::string_view::npos) return text.size();
    return text[end] == '"' ? end + 1 : end;
}

std::size_t bracket_length(std::string_view text) {
    std::size_t depth = 0;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t opaque = opaque_length(text.substr(at), at == 0 ? ' ' : text[at - 1]);
        const char c = opaque == 0 ? text[at] : ' ';
        at += std::max<std::size_t>(opaque, 1);
        if (c == '{' || c == '}') return 0;
        if (c == '(') ++depth;
        if (c == ')' && --depth == 0) return at;
    }
    return 0;
}

std::size_t carry_on_length(std::string_view text) {
    constexpr std::array<std::string_view, 6> words = {"using",   "test_piece", "after",
                                                       "caution", "repeat",     "else"};
    const std::size_t line_end = text.starts_with("\r\n") ? 2 : text.starts_with('\n') ? 1 : 0;
    if (line_end == 0) return 0;
    const std::size_t begin = std::min(text.find_first_not_of(" \t", line_end), text.size());
    const std::string_view rest = text.substr(begin);
    const std::string_view word = rest.substr(0, word_length(rest));
    if (std::ranges::find(words, word) == words.end()) return 0;
    const std::size_t next = std::min(rest.find_first_not_of(" \t", word.size()), rest.size());
    return rest.substr(next).starts_with('=') ? 0 : begin;  // else it is a parameter of that name
}

static bool ends_statement(std::string_view rest) {
    if (carry_on_length(rest) > 0) return false;
    if (rest.front() == '\n' &&
        rest.substr(std::min(rest.find_first_not_of(" \t\r\n"), rest.size())).starts_with('{')) {
        return false;  // a block that was moved to the next line
    }
    return rest.front() == '\n' || rest.front() == ';' || rest.front() == '}' || rest.starts_with("--");
}

std::size_t statement_length(std::string_view text, std::size_t stopped) {
    std::size_t depth = 0;
    std::size_t at = 0;
    while (at < text.size() && !(at >= stopped && depth == 0 && ends_statement(text.substr(at)))) {
        const std::size_t opaque = opaque_length(text.substr(at), at == 0 ? ' ' : text[at - 1]);
        if (opaque == 0 && text[at] == '{') ++depth;
        if (opaque == 0 && text[at] == '}' && depth > 0) --depth;
        at += std::max<std::size_t>(opaque, 1);
    }
    while (at > 0 &&
           (text[at - 1] == ' ' || text[at - 1] == '\t' || text[at - 1] == '\r' || text[at - 1] == '\n'))
        --at;
    return std::max<std::size_t>(at, 1);
}

}  // namespace rodwright
