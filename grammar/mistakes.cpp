#include "grammar/mistakes.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "compiler/limits.hpp"
#include "grammar/scan.hpp"

namespace rodwright {
namespace {

std::size_t character_length(std::string_view text) {
    std::size_t length = 1;
    while (length < text.size() && (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) ++length;
    return length;
}

// `leg[front].` before the `.` that is the last token.
std::string_view base_of_member(const Trouble& trouble) {
    std::size_t begin = trouble.token_begin;
    while (begin > trouble.statement) {
        const char c = trouble.text[begin - 1];
        if (c == ']') {
            begin = std::max<std::size_t>(trouble.text.rfind('[', begin - 1), trouble.statement);
        } else if (is_word_part(c) || c == '.') {
            --begin;
        } else {
            break;
        }
    }
    return trouble.text.substr(begin, trouble.token_end - begin);
}

// "after `leg`"
std::string after_what(const Trouble& trouble, std::string_view after) {
    if (!after.empty()) return fmt::format(" after {}", after);
    const bool one_line = trouble.token().find('\n') == std::string_view::npos;
    if (!trouble.after_token() || !one_line) return "";
    const std::string_view token = trouble.token() == "." ? base_of_member(trouble) : trouble.token();
    if (token.starts_with('"') && token.size() > 1) return " after the text";
    return fmt::format(" after `{}`", token);
}

// "not `leg`", where something else stands on the same line.
std::string instead_of(const Trouble& trouble) {
    if (!trouble.same_line()) return "";
    const std::size_t blanks = std::min(trouble.rest().find_first_not_of(" \t"), trouble.rest().size());
    const std::string_view found = next_token(trouble.rest().substr(blanks));
    if (found.empty()) return "";
    return found.starts_with('"') ? ", not a text" : fmt::format(", not `{}`", found);
}

// At the end of what was read; at what stands there if nothing of the statement was.
Span place(const Trouble& trouble) {
    if (trouble.after_token()) return trouble.span(trouble.token_end, 0);
    return trouble.span(trouble.at, next_token(trouble.rest()).size());
}

Diagnostic with_opening(Diagnostic diagnostic, const Trouble& trouble, std::string_view what) {
    if (what.size() != 3 || std::string_view(")]}").find(what[1]) == std::string_view::npos)
        return diagnostic;
    const Span opening = opening_of(trouble, what[1]);
    if (opening.file == FileId::none) return diagnostic;
    return std::move(diagnostic)
        .label(opening, fmt::format("this `{}` is not closed", trouble.text[opening.begin]));
}

}  // namespace

bool Trouble::same_line() const {
    const std::size_t from = std::min(token_end, at);
    return text.substr(from, at - from).find('\n') == std::string_view::npos;
}

std::string_view next_token(std::string_view text) {
    if (text.empty() || text[0] == '\n' || text[0] == '\r') return {};
    if (text[0] == '"') return text.substr(0, opaque_length(text, ' '));
    if (!is_word_part(text[0])) return text.substr(0, character_length(text));
    std::size_t length = 1;
    while (length < text.size() && is_word_part(text[length])) ++length;
    return text.substr(0, length);
}

Diagnostic explain(const Trouble& trouble, std::string_view what, std::string_view after) {
    if (what == "a number") return bad_number_text(trouble);
    if (std::optional<Diagnostic> known = foreseen(trouble, what)) return *std::move(known);
    std::string message =
        fmt::format("expected {}{}{}", what, after_what(trouble, after), instead_of(trouble));
    if (what == "`}`" && trouble.rest().empty()) message = "expected `}` before the end of the file";
    return with_opening(diagnose(Code::expected, place(trouble), std::move(message)), trouble, what);
}

Diagnostic too_deep(const Trouble& trouble) {
    return diagnose(Code::too_large, trouble.span(trouble.at, 1),
                    fmt::format("more than {} brackets and blocks stand within one another", limits::nesting))
        .hint("give the inner values names with `let`");
}

Diagnostic too_many_digits(const Trouble& trouble) {
    return diagnose(Code::too_large,
                    trouble.span(trouble.token_begin, trouble.token_end - trouble.token_begin),
                    fmt::format("a number has more than {} digits", limits::number_digits));
}

Diagnostic too_many_operators(FileId file, std::uint32_t begin, std::uint32_t end) {
    return diagnose(Code::too_large, {file, begin, end},
                    fmt::format("more than {} operations hang on one another", limits::tree_depth))
        .hint("give parts of the expression names with `let`");
}

}  // namespace rodwright
