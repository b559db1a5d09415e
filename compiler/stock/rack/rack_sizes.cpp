// Lengths in a rack's file.
#include <fmt/format.h>

#include <algorithm>

#include "compiler/stock/rack/rack_fields.hpp"

namespace rodwright {

namespace {

constexpr std::string_view blanks = " \t";

std::string_view trimmed(std::string_view text) {
    const std::size_t begin = std::min(text.find_first_not_of(blanks), text.size());
    return text.substr(begin, text.find_last_not_of(blanks) + 1 - begin);
}

// The two sides of the first `separator`, or `text` twice.
std::pair<std::string_view, std::string_view> split_at(std::string_view text, std::string_view separator) {
    const std::size_t at = text.find(separator);
    if (at == std::string_view::npos) return {text, text};
    return {trimmed(text.substr(0, at)), trimmed(text.substr(at + separator.size()))};
}

SizePair read_pair(FieldReader& fields, const YamlNode& node, std::string_view separator,
                   const SizeBounds& bounds) {
    const auto [first, second] = split_at(node.text, separator);
    const std::optional<Rational> one = read_size(fields, node, first, bounds);
    const std::optional<Rational> other = read_size(fields, node, second, bounds);
    return {one.value_or(0), other.value_or(0)};
}

bool is_zero(const Quantity& quantity) {
    return quantity.is_number() && quantity.value == 0;
}

void fault_in_length(FieldReader& fields, const YamlNode& node, std::string_view text,
                     const std::optional<Quantity>& read) {
    if (read && read->is_number()) {
        fields.fault(node, fmt::format("`{}` has no unit", shortened(text)),
                     fmt::format("write `{0} in` or `{0}mm`", shortened(text)));
    } else {
        fields.fault(node, fmt::format("`{}` is not a length", shortened(text)),
                     "write it as in a design: `7-1/2 in`, `8 ft`, `190mm`");
    }
}

}  // namespace

std::optional<Rational> read_size(FieldReader& fields, const YamlNode& node, std::string_view text,
                                  const SizeBounds& bounds) {
    const std::optional<Quantity> read = parse_quantity(text);
    if (!read || (!read->is_length() && !is_zero(*read))) {
        fault_in_length(fields, node, text, read);
        return std::nullopt;
    }
    if (read->value < bounds.least || read->value > bounds.most) {
        const std::string_view size = read->value < bounds.least ? "small" : "large";
        fields.fault(node, fmt::format("`{}` is too {}", shortened(text), size),
                     fmt::format("write a length {}", bounds.words));
        return std::nullopt;
    }
    return read->value;
}

bool is_by_quarters(std::string_view text) {
    const std::string_view count = text.substr(0, text.find('/'));
    return text.ends_with("/4") && count.size() + 2 == text.size() && !count.empty() && count.size() <= 2 &&
           std::ranges::all_of(count, [](char c) { return c >= '0' && c <= '9'; });
}

std::optional<Rational> read_thickness(FieldReader& fields, const YamlNode& node) {
    if (!fields.expect(node, YamlKind::scalar)) return std::nullopt;
    if (is_by_quarters(node.text)) return read_size(fields, node, node.text + " in", thickness_bounds);
    const std::optional<Quantity> read = parse_quantity(node.text);
    if (!read || !read->is_number()) return read_size(fields, node, node.text, thickness_bounds);
    fields.fault(
        node, fmt::format("`{}` has no unit", shortened(node.text)),
        fmt::format("write `{0} in` or `{0}mm`, or rough quarters such as `4/4`", shortened(node.text)));
    return std::nullopt;
}

Rational size_of(FieldReader& fields, std::string_view key, const SizeBounds& bounds) {
    const YamlNode* node = fields.scalar(key);
    return node == nullptr ? Rational() : read_size(fields, *node, node->text, bounds).value_or(0);
}

Rational size_or_none(FieldReader& fields, std::string_view key, const SizeBounds& bounds) {
    const YamlNode* node = fields.optional_scalar(key);
    return node == nullptr ? Rational() : read_size(fields, *node, node->text, bounds).value_or(0);
}

Rational thickness_of(FieldReader& fields) {
    const YamlNode* node = fields.scalar("thickness");
    return node == nullptr ? Rational() : read_thickness(fields, *node).value_or(0);
}

SizePair sizes_of(FieldReader& fields, std::string_view key, const SizeBounds& bounds) {
    const YamlNode* node = fields.scalar(key);
    return node == nullptr ? SizePair() : read_pair(fields, *node, " to ", bounds);
}

SizePair at_both_ends(FieldReader& fields, std::string_view key, const SizeBounds& bounds) {
    const YamlNode* node = fields.entry(key);
    if (node == nullptr) return {};
    if (node->kind != YamlKind::list) {
        node = fields.optional_scalar(key);
        return node == nullptr ? SizePair() : read_pair(fields, *node, ",", bounds);
    }
    const auto& ends = node->children;
    if (ends.empty() || ends.size() > 2) {
        fields.fault(*node, fmt::format("a board has two ends, here are {} lengths", ends.size()),
                     fmt::format("write `{}: [2 in, 1 in]`", key));
        return {};
    }
    return {read_size(fields, ends.front(), ends.front().text, bounds).value_or(0),
            read_size(fields, ends.back(), ends.back().text, bounds).value_or(0)};
}

}  // namespace rodwright
