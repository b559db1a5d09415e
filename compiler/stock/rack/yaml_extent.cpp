#include "compiler/stock/rack/yaml_extent.hpp"

#include <algorithm>

namespace rodwright {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr std::string_view yaml_blanks = " \t\r";

std::size_t or_end(std::string_view text, std::size_t found) {
    return std::min(found, text.size());
}

std::size_t first_of_line(std::string_view text, std::size_t line) {
    return or_end(text, text.find_first_not_of(yaml_blanks, line));
}

std::size_t indent_of(std::string_view text, std::size_t line) {
    return or_end(text, text.find_first_not_of(' ', line)) - line;
}

bool is_quote(char c) {
    return c == '"' || c == '\'';
}

// Past a plain scalar within brackets, or past what of it stands on this line.
std::size_t plain_end(std::string_view text, std::size_t at) {
    constexpr std::string_view closing = ",[]{}\n";
    for (; at < text.size() && closing.find(text[at]) == std::string_view::npos; ++at) {
        const bool before_gap = at + 1 == text.size() || text.find_first_of(" \t\r\n,[]{}", at + 1) == at + 1;
        if (text[at] == ':' && before_gap) break;
        if (text[at] == '#' && yaml_blanks.find(text[at - 1]) != std::string_view::npos) break;
    }
    return at;
}

const YamlNode& last_leaf(const YamlNode& node) {
    return node.children.empty() ? node : last_leaf(node.children.back());
}

// Where the content of a value ends, or a place in the last line of which indentation tells the rest.
std::size_t content_end(std::string_view text, const YamlNode& node) {
    const std::size_t begin = node.span.begin;
    if (is_flow(text, node)) return flow_end(text, begin);
    if (!node.children.empty()) return content_end(text, node.children.back());
    return begin < text.size() && is_quote(text[begin]) ? quoted_end(text, begin) : begin;
}

// Lines of a text behind `|` or `>`: blank ones within it, and all further in than its key.
std::size_t block_scalar_end(std::string_view text, std::size_t line, std::size_t key_column) {
    std::size_t end = line;
    while (line < text.size()) {
        const bool blank = is_blank_line(text, line);
        if (!blank && indent_of(text, line) <= key_column) break;
        line = next_line(text, line);
        if (!blank) end = line;
    }
    return end;
}

bool is_block_scalar(std::string_view text, const YamlNode& leaf) {
    return leaf.kind == YamlKind::scalar && leaf.span.begin < text.size() &&
           (text[leaf.span.begin] == '|' || text[leaf.span.begin] == '>');
}

}  // namespace

std::size_t line_start(std::string_view text, std::size_t at) {
    return at == 0 ? 0 : text.rfind('\n', at - 1) + 1;
}

std::size_t next_line(std::string_view text, std::size_t at) {
    const std::size_t end = text.find('\n', at);
    return end == std::string_view::npos ? text.size() : end + 1;
}

std::size_t column_of(std::string_view text, std::size_t at) {
    const std::size_t start = line_start(text, at);
    const bool marked = start == 0 && text.starts_with(byte_order_mark) && at >= byte_order_mark.size();
    return at - start - (marked ? byte_order_mark.size() : 0);
}

std::size_t skip_blank(std::string_view text, std::size_t at) {
    while (true) {
        at = or_end(text, text.find_first_not_of(" \t\r\n", at));
        if (at == text.size() || text[at] != '#') return at;
        at = next_line(text, at);
    }
}

bool is_blank_line(std::string_view text, std::size_t line) {
    const std::size_t first = first_of_line(text, line);
    return first == text.size() || text[first] == '\n';
}

bool rest_is_blank(std::string_view text, std::size_t at) {
    const std::size_t first = first_of_line(text, at);
    return first == text.size() || text[first] == '\n' || text[first] == '#';
}

std::size_t comments_above(std::string_view text, std::size_t line, std::size_t lowest, std::size_t column) {
    while (line > lowest) {
        const std::size_t above = line_start(text, line - 1);
        if (above < lowest || indent_of(text, above) != column || text[above + column] != '#') break;
        line = above;
    }
    return line;
}

std::size_t quoted_end(std::string_view text, std::size_t begin) {
    const char quote = text[begin];
    for (std::size_t at = begin + 1; at < text.size(); ++at) {
        if (quote == '"' && text[at] == '\\') {
            ++at;
        } else if (text[at] == quote) {
            const bool doubled = quote == '\'' && at + 1 < text.size() && text[at + 1] == quote;
            if (!doubled) return at + 1;
            ++at;
        }
    }
    return text.size();
}

std::size_t flow_end(std::string_view text, std::size_t begin) {
    std::size_t depth = 0;
    for (std::size_t at = begin; at < text.size();) {
        at = skip_blank(text, at);
        if (at == text.size()) break;
        const char c = text[at];
        if (c == '[' || c == '{') {
            ++depth;
            ++at;
        } else if (c == ']' || c == '}') {
            ++at;
            if (--depth == 0) return at;
        } else if (c == ',' || c == ':') {
            ++at;
        } else {
            at = is_quote(c) ? quoted_end(text, at) : plain_end(text, at);
        }
    }
    return text.size();
}

bool is_flow(std::string_view text, const YamlNode& node) {
    const bool holds_others = node.kind == YamlKind::list || node.kind == YamlKind::map;
    return holds_others && (text[node.span.begin] == '[' || text[node.span.begin] == '{');
}

std::size_t colon_behind(std::string_view text, const YamlNode& key) {
    const std::size_t begin = key.key_span.begin;
    return skip_blank(text, is_quote(text[begin]) ? quoted_end(text, begin) : begin + key.key.size());
}

std::size_t no_value_size(std::string_view text, std::size_t at) {
    for (const std::string_view word : {"~", "null", "Null", "NULL"}) {
        if (text.substr(at).starts_with(word)) return word.size();
    }
    return 0;
}

std::size_t scalar_end(std::string_view text, const YamlNode& node) {
    const std::size_t begin = node.span.begin;
    return is_quote(text[begin]) ? quoted_end(text, begin) : begin + node.text.size();
}

std::size_t lines_end(std::string_view text, const YamlNode& node, std::size_t column) {
    std::size_t line = next_line(text, content_end(text, node));
    const YamlNode& leaf = last_leaf(node);
    if (is_block_scalar(text, leaf)) {
        line = block_scalar_end(text, line, column_of(text, leaf.key_span.begin));
    }
    while (line < text.size()) {
        std::size_t further = line;
        while (further < text.size() && is_blank_line(text, further)) further = next_line(text, further);
        if (further == text.size() || indent_of(text, further) <= column) break;
        // A comment after a blank line belongs to what follows.
        const bool comment = text[first_of_line(text, further)] == '#';
        if (further != line && comment) break;
        line = next_line(text, further);
    }
    return line;
}

}  // namespace rodwright
