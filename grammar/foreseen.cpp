// Mistakes that are known by what is written.
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "compiler/quantity/quantity.hpp"
#include "grammar/mistakes.hpp"
#include "grammar/scan.hpp"

namespace rodwright {
namespace {

struct Sign {
    std::string_view spelled;
    std::string_view message;  // `{}` stands for it
    std::string_view help;
};

constexpr std::string_view straight_quote = "write the straight `\"`, for inches and around texts";
constexpr std::string_view straight_apostrophe = "write the straight `'` for feet";
constexpr std::string_view comment_help = "a comment begins with `--`";
constexpr std::string_view curly_quote = "`{}` is a curly quote";
constexpr std::string_view no_sign = "`{}` is not a sign of the language";
constexpr std::string_view no_comment = "`{}` does not begin a comment";

constexpr std::array signs = {
    Sign{"\u201C", curly_quote, straight_quote},
    Sign{"\u201D", curly_quote, straight_quote},
    Sign{"\u2033", "`{}` is not an inch mark here", straight_quote},
    Sign{"\u2018", curly_quote, straight_apostrophe},
    Sign{"\u2019", curly_quote, straight_apostrophe},
    Sign{"\u2032", "`{}` is not a foot mark here", straight_apostrophe},
    Sign{"\u2013", "`{}` is a long dash", "write `-`"},
    Sign{"\u2014", "`{}` is a long dash", "write `-`, or `--` for a comment"},
    Sign{"\u2212", "`{}` is not the minus sign of the keyboard", "write `-`"},
    Sign{"\u00D7", no_sign, "write `*`"},
    Sign{"\u00F7", no_sign, "write `/`"},
    Sign{"\u2264", no_sign, "write `<=`"},
    Sign{"\u2265", no_sign, "write `>=`"},
    Sign{"\u00B0", "`{}` is not a unit here", "write `deg` for degrees, `C` or `F` for a temperature"},
    Sign{"\u00A0", "this blank is a no-break space", "write an ordinary blank"},
    Sign{"\r", "this line ends in a way that is not read",
         "save the file with line ends of `\\n` or `\\r\\n`"},
    Sign{"#", no_comment, comment_help},
    Sign{"//", no_comment, comment_help},
    Sign{"/*", no_comment, comment_help},
    Sign{":=", no_sign, "write `=`"},
    Sign{"&&", no_sign, "write `and`"},
    Sign{"||", no_sign, "write `or`"},
    Sign{"!", no_sign, "write `not`"},
};

struct Spelling {
    std::string_view written;
    std::string_view meant;
};

constexpr std::array fractions = {Spelling{"\u00BC", "1/4"}, Spelling{"\u00BD", "1/2"},
                                  Spelling{"\u00BE", "3/4"}, Spelling{"\u215B", "1/8"}};

constexpr std::array spellings = {
    Spelling{"inch", "in"},        Spelling{"inches", "in"},     Spelling{"ins", "in"},
    Spelling{"foot", "ft"},        Spelling{"feet", "ft"},       Spelling{"millimetre", "mm"},
    Spelling{"millimetres", "mm"}, Spelling{"millimeter", "mm"}, Spelling{"millimeters", "mm"},
    Spelling{"MM", "mm"},          Spelling{"mms", "mm"},        Spelling{"centimetres", "cm"},
    Spelling{"metre", "m"},        Spelling{"metres", "m"},      Spelling{"meters", "m"},
    Spelling{"degree", "deg"},     Spelling{"degrees", "deg"},   Spelling{"pound", "lb"},
    Spelling{"pounds", "lb"},      Spelling{"lbs", "lb"},        Spelling{"kgs", "kg"},
    Spelling{"minutes", "min"},    Spelling{"mins", "min"},      Spelling{"hour", "h"},
    Spelling{"hours", "h"},        Spelling{"seconds", "s"},     Spelling{"days", "day"},
};

std::string_view unit_meant(std::string_view written) {
    const auto* const found = std::ranges::find(spellings, written, &Spelling::written);
    return found == spellings.end() ? std::string_view{} : found->meant;
}

bool is_number(std::string_view token) {
    return !token.empty() && token[0] >= '0' && token[0] <= '9';
}

Diagnostic known(const Trouble& trouble, std::size_t at, std::size_t length, std::string message,
                 std::string help) {
    return diagnose(Code::expected, trouble.span(at, length), std::move(message)).hint(std::move(help));
}

Diagnostic bad_number(const Trouble& trouble, std::size_t at, std::size_t length, std::string message,
                      std::string help) {
    return diagnose(Code::bad_number, trouble.span(at, length), std::move(message)).hint(std::move(help));
}

Diagnostic unknown_unit(const Trouble& trouble, std::size_t at, std::string_view word) {
    const std::string_view meant = unit_meant(word);
    return bad_number(
        trouble, at, word.size(), fmt::format("`{}` is not a unit", word),
        meant.empty() ? fmt::format("the units are {}", unit_words()) : fmt::format("write `{}`", meant));
}

// `//` and `/*` are read as a division first.
std::optional<Diagnostic> foreseen_sign(const Trouble& trouble) {
    const bool divided = trouble.token() == "/" && trouble.token_end == trouble.at;
    const std::size_t at = divided ? trouble.token_begin : trouble.at;
    const std::string_view rest = trouble.text.substr(at);
    for (const Sign& sign : signs) {
        if (!rest.starts_with(sign.spelled)) continue;
        return known(trouble, at, sign.spelled.size(), fmt::format(fmt::runtime(sign.message), sign.spelled),
                     std::string(sign.help));
    }
    for (const Spelling& fraction : fractions) {
        if (!rest.starts_with(fraction.written)) continue;
        return known(trouble, at, fraction.written.size(),
                     fmt::format("`{}` is one character, not a fraction", fraction.written),
                     fmt::format("write `{0}`; after a whole number `1-{0}`", fraction.meant));
    }
    return std::nullopt;
}

std::optional<Diagnostic> foreseen_after_number(const Trouble& trouble) {
    if (!is_number(trouble.token()) || !trouble.after_token() || !trouble.same_line()) return std::nullopt;
    const std::string_view next = next_token(trouble.rest());
    if (!unit_meant(next).empty()) return unknown_unit(trouble, trouble.at, next);
    if (!is_number(next)) return std::nullopt;
    const std::size_t end =
        std::min(trouble.rest().find_first_not_of("0123456789/.\"'"), trouble.rest().size());
    const std::string_view second = trouble.rest().substr(0, end);
    return bad_number(trouble, trouble.token_begin, trouble.at + end - trouble.token_begin,
                      "two numbers stand side by side",
                      fmt::format("write `{0}-{1}` for a whole number and a fraction, `{0} + {1}` for a sum",
                                  trouble.token(), second));
}

// `==` in the statement so far, outside brackets.
std::optional<Diagnostic> foreseen_double_equals(const Trouble& trouble, std::string_view what) {
    if (what != "`=`") return std::nullopt;
    const std::size_t end = std::min<std::size_t>(trouble.at + 2, trouble.text.size());
    const std::size_t found = trouble.text.substr(trouble.statement, end - trouble.statement).find("==");
    if (found == std::string_view::npos) return std::nullopt;
    return known(trouble, trouble.statement + found, 2, "`==` compares; an equation has one `=`",
                 "write `=`");
}

constexpr std::array statement_words = {
    "accept", "assembly", "bevel",   "blend", "check",   "climate", "done",  "extend", "fasten",
    "finish", "glue",     "glued",   "grain", "hold",    "join",    "joint", "leave",  "let",
    "lets",   "load",     "made",    "match", "needs",   "opens",   "param", "part",   "place",
    "rake",   "remove",   "require", "shape", "show",    "slides",  "space", "splay",  "step",
    "supply", "take",     "unit",    "use",   "variant", "wood",    "piece"};

std::string help_for_first_word(const Trouble& trouble, std::string_view word) {
    const std::string_view behind = trouble.text.substr(trouble.statement + word.size());
    const bool is_statement = std::ranges::find(statement_words, word) != statement_words.end();
    if (is_statement && behind.starts_with('(')) return fmt::format("write a blank after `{}`", word);
    if (trouble.token() == ")" || behind.starts_with(" (")) {
        return fmt::format("an equation is written `a = b`, a shape `{}(...) on long edges`", word);
    }
    const std::string near = nearest_name(word, {statement_words.begin(), statement_words.end()});
    return near.empty() || near == word ? std::string{} : fmt::format("did you mean `{}`?", near);
}

// A statement that is neither an equation nor a shape nor begins with a word of the language.
std::optional<Diagnostic> foreseen_no_statement(const Trouble& trouble, std::string_view what) {
    const std::string_view start = trouble.text.substr(trouble.statement);
    const std::string_view word = start.substr(0, word_length(start));
    if (what != "`=`" || word.empty() || !trouble.after_token()) return std::nullopt;
    const bool words_only = trouble.token_begin == trouble.statement || trouble.token() == ")";
    std::string help = words_only ? help_for_first_word(trouble, word) : std::string{};
    if (help.empty()) return std::nullopt;
    return known(trouble, trouble.token_end, 0,
                 fmt::format("expected `=` or `on` after `{}`", trouble.token()), std::move(help));
}

std::optional<Diagnostic> foreseen_word(const Trouble& trouble, std::string_view what) {
    const std::string_view word = next_token(trouble.rest());
    const bool at_start = what == "a statement" || what == "a definition";
    if (at_start && word == "else") {
        return known(trouble, trouble.at, 4, "`else` without its `if`", "write `} else {` on one line");
    }
    if (at_start && word == "piece") {
        return known(trouble, trouble.at, 5, "a piece cannot stand within a block",
                     "close the block with `}` before it");
    }
    if (is_reserved(word) && (what.ends_with("name") || what.starts_with("a w") || what == "a name")) {
        return known(trouble, trouble.at, word.size(),
                     fmt::format("`{}` is a word of the language, not a name", word), "choose another name");
    }
    return std::nullopt;
}

std::optional<Diagnostic> foreseen_brace(const Trouble& trouble, std::string_view what) {
    if (what == "nothing to close") {
        return known(trouble, trouble.at, 1, "this `}` closes nothing",
                     "take it out, or write the `{` that it closes");
    }
    if (what != "`{`") return std::nullopt;
    const std::string_view rest = trouble.rest();
    const std::size_t next = rest.find_first_not_of(" \t\r\n");
    if (next == std::string_view::npos || next == 0 || rest[next] != '{') return std::nullopt;
    return known(trouble, trouble.token_end, 0, "expected `{` on the line that it belongs to",
                 "move the `{` to the end of this line");
}

}  // namespace

std::optional<Diagnostic> foreseen(const Trouble& trouble, std::string_view what) {
    if (auto found = foreseen_brace(trouble, what)) return found;
    if (auto found = foreseen_double_equals(trouble, what)) return found;
    if (auto found = foreseen_sign(trouble)) return found;
    if (auto found = foreseen_after_number(trouble)) return found;
    if (auto found = foreseen_word(trouble, what)) return found;
    return foreseen_no_statement(trouble, what);
}

Diagnostic bad_number_text(const Trouble& trouble) {
    const std::string_view rest = trouble.text.substr(trouble.token_end);
    const std::string_view number = trouble.token();
    const std::string_view next = next_token(rest);
    if (is_word_start(rest[0])) return unknown_unit(trouble, trouble.token_end, next);
    if (rest[0] == '-') {
        const std::string_view second = next_token(rest.substr(1));
        return bad_number(
            trouble, trouble.token_begin, number.size() + 1 + second.size(),
            fmt::format("`{}-{}` could be a difference or a mixed number", number, second),
            fmt::format("write `{} - {}` for the difference; a mixed number is `1-5/8`", number, second));
    }
    if (rest[0] == ',') {
        const std::string_view decimals = next_token(rest.substr(1));
        return bad_number(trouble, trouble.token_end, 1, "a comma stands in a number",
                          fmt::format("write `{}.{}` with a point", number, decimals));
    }
    if (rest[0] == ' ' || rest[0] == '\t') {
        return bad_number(trouble, trouble.token_end, rest.find_first_not_of(" \t"),
                          "a number and its unit stand too far apart",
                          "write one blank between them, or none");
    }
    return bad_number(trouble, trouble.token_end, next.size(),
                      fmt::format("`{}` cannot stand in a number", next),
                      "a number is written `3`, `3/4`, `1-5/8` or `0.75`, and its unit follows");
}

}  // namespace rodwright
