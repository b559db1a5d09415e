// From the place where reading stopped to what the maker is told: what was expected, and, for the mistakes
// that people make who come from elsewhere, what to write instead.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

// Where reading stopped. All places are offsets in `text`, the whole file.
struct Trouble {
    std::string_view text;
    FileId file = FileId::none;
    std::uint32_t at = 0;
    std::uint32_t token_begin = 0;  // the last token that was read
    std::uint32_t token_end = 0;
    std::uint32_t statement = 0;  // where the innermost statement begins
    unsigned brackets = 0;        // how many ( and [ are open

    std::string_view rest() const { return text.substr(at); }
    std::string_view token() const { return text.substr(token_begin, token_end - token_begin); }
    // Whether a token of the innermost statement was read.
    bool after_token() const { return token_end > statement; }
    // Whether what stands at `at` is on the line of the last token.
    bool same_line() const;
    Span span(std::size_t begin, std::size_t length) const {
        return {file, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(begin + length)};
    }
};

// What stands at the beginning of `text`, to be named in a message: a word, a number, one sign, or a text in
// quotes; empty at a line end.
std::string_view next_token(std::string_view text);

// A mistake that is known by what is written there; empty if it is none of those.
std::optional<Diagnostic> foreseen(const Trouble& trouble, std::string_view what);

// A number that something spoils which stands right behind it.
Diagnostic bad_number_text(const Trouble& trouble);

// Where the bracket or brace was opened that `sign` should have closed; an empty span if it cannot be told.
Span opening_of(const Trouble& trouble, char sign);

// "expected WHAT after AFTER"; an empty `after` is the last token. `what` is "number" or "nothing to close"
// for what the rules name so.
Diagnostic explain(const Trouble& trouble, std::string_view what, std::string_view after);

Diagnostic too_deep(const Trouble& trouble);
Diagnostic too_many_digits(const Trouble& trouble);
Diagnostic too_many_operators(FileId file, std::uint32_t begin, std::uint32_t end);

// What keeps a file from being text that can be read at all; empty if nothing does.
std::optional<Diagnostic> check_text(FileId file, std::string_view text);

}  // namespace rodwright
