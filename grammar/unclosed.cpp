// Which opening brace or bracket is the one without its end.
#include <algorithm>
#include <vector>

#include "grammar/mistakes.hpp"
#include "grammar/scan.hpp"

namespace rodwright {
namespace {

struct Opened {
    char sign;
    std::size_t at;
};

std::size_t indentation(std::string_view text, std::size_t at) {
    const std::size_t line = text.rfind('\n', at) == std::string_view::npos ? 0 : text.rfind('\n', at) + 1;
    return text.find_first_not_of(" \t", line) - line;
}

bool first_on_line(std::string_view text, std::size_t at) {
    const std::size_t before = text.substr(0, at).find_last_not_of(" \t");
    return before == std::string_view::npos || text[before] == '\n';
}

// Calls `see(sign, place)` for every bracket and brace outside comments and texts.
template <typename See>
void each_bracket(std::string_view text, std::size_t begin, std::size_t end, See see) {
    for (std::size_t at = begin; at < end;) {
        const std::size_t opaque = opaque_length(text.substr(at), at == 0 ? ' ' : text[at - 1]);
        if (opaque == 0 && std::string_view("(){}[]").find(text[at]) != std::string_view::npos)
            see(text[at], at);
        at += std::max<std::size_t>(opaque, 1);
    }
}

// A `}` that begins a line further out than the line of its `{` shows which `{` has lost its own.
Span opening_brace(const Trouble& trouble) {
    std::vector<std::size_t> open;
    std::size_t suspect = std::string_view::npos;
    const std::string_view text = trouble.text;
    each_bracket(text, 0, text.size(), [&](char sign, std::size_t at) {
        if (sign == '{') open.push_back(at);
        if (sign != '}' || open.empty()) return;
        const bool out = first_on_line(text, at) && indentation(text, at) < indentation(text, open.back());
        if (out && suspect == std::string_view::npos) suspect = open.back();
        open.pop_back();
    });
    if (suspect != std::string_view::npos) return trouble.span(suspect, 1);
    return open.empty() ? Span{} : trouble.span(open.back(), 1);
}

Span opening_bracket(const Trouble& trouble, char wanted) {
    std::vector<Opened> open;
    each_bracket(trouble.text, trouble.statement, trouble.token_end, [&](char sign, std::size_t at) {
        if (sign == '(' || sign == '[' || sign == '{') {
            open.push_back({sign, at});
        } else if (!open.empty()) {
            open.pop_back();
        }
    });
    for (std::size_t i = open.size(); i-- > 0;) {
        if (open[i].sign == wanted) return trouble.span(open[i].at, 1);
    }
    return {};
}

}  // namespace

Span opening_of(const Trouble& trouble, char sign) {
    if (sign == '}') return opening_brace(trouble);
    return opening_bracket(trouble, sign == ')' ? '(' : '[');
}

}  // namespace rodwright
