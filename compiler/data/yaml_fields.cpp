#include "compiler/data/yaml_fields.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace rodwright {

static std::string_view kind_name(YamlKind kind) {
    static constexpr std::array<std::string_view, 4> names = {"no value", "a word or a number", "a list",
                                                              "a map"};
    return names[static_cast<std::size_t>(kind)];
}

std::string shortened(std::string_view text) {
    constexpr std::size_t most = 40;
    if (text.size() <= most) return std::string(text);
    std::size_t end = most;
    // Not in the middle of a character.
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
    return std::string(text.substr(0, end)) + "...";
}

std::string quoted_words(const std::vector<std::string_view>& words) {
    std::string text;
    for (const std::string_view word : words) text += fmt::format("{}`{}`", text.empty() ? "" : ", ", word);
    return text;
}

const YamlNode* find_entry(const YamlNode& map, std::string_view key) {
    const auto found = std::ranges::find(map.children, key, &YamlNode::key);
    return found == map.children.end() ? nullptr : &*found;
}

bool expect_kind(const YamlNode& node, YamlKind kind, Diagnostics& diagnostics) {
    if (node.kind == kind) return true;
    diagnostics.add(
        diagnose(Code::bad_data, node.span,
                 fmt::format("{} is wanted here, this is {}", kind_name(kind), kind_name(node.kind))));
    return false;
}

std::optional<Quantity> read_quantity(const YamlNode& node, Diagnostics& diagnostics) {
    if (!expect_kind(node, YamlKind::scalar, diagnostics)) return std::nullopt;
    std::optional<Quantity> quantity = parse_quantity(node.text);
    if (!quantity) {
        diagnostics.add(
            diagnose(Code::bad_data, node.span, fmt::format("`{}` is not a number", shortened(node.text)))
                .hint("write a number as in a design: `0.75`, `3/4 in`, `19mm`"));
    }
    return quantity;
}

// In `{checks: 2 in, 1 in}` the second length is a key without a value.
static std::string what_to_write(const YamlNode& unknown, const std::vector<std::string_view>& known) {
    const bool is_number = !unknown.key.empty() && unknown.key[0] >= '0' && unknown.key[0] <= '9';
    if (is_number && unknown.kind == YamlKind::nothing) {
        return "in braces a comma ends a value; a list stands in brackets: `[2 in, 1 in]`";
    }
    const std::string nearest = nearest_name(unknown.key, {known.begin(), known.end()});
    if (nearest.empty()) return "the fields here are " + quoted_words(known);
    return fmt::format("write `{}`", nearest);
}

FieldReader::FieldReader(const YamlNode& node, std::initializer_list<std::string_view> known,
                         Diagnostics& diagnostics)
    : node_(node), diagnostics_(diagnostics) {
    ok_ = expect_kind(node, YamlKind::map, diagnostics);
    if (!ok_) return;
    for (const YamlNode& entry : node.children) {
        if (std::ranges::find(known, std::string_view(entry.key)) != known.end()) continue;
        ok_ = false;
        Diagnostic unknown = diagnose(Code::bad_data, entry.key_span,
                                      fmt::format("there is no field `{}` here", shortened(entry.key)));
        unknown.help = what_to_write(entry, known);
        diagnostics.add(std::move(unknown));
    }
}

void FieldReader::fault(Diagnostic diagnostic) {
    ok_ = false;
    diagnostics_.add(std::move(diagnostic));
}

void FieldReader::fault(const YamlNode& node, std::string message, std::string hint) {
    fault(diagnose(Code::bad_data, node.span, std::move(message)).hint(std::move(hint)));
}

bool FieldReader::expect(const YamlNode& node, YamlKind kind) {
    const bool is_that = expect_kind(node, kind, diagnostics_);
    ok_ = ok_ && is_that;
    return is_that;
}

const YamlNode* FieldReader::entry(std::string_view key) const {
    return node_.kind == YamlKind::map ? find_entry(node_, key) : nullptr;
}

void FieldReader::require(std::initializer_list<std::string_view> keys, const std::string& hint) {
    if (node_.kind != YamlKind::map) return;
    std::vector<std::string_view> missing;
    for (const std::string_view key : keys) {
        if (find_entry(node_, key) == nullptr) missing.push_back(key);
    }
    if (missing.empty()) return;
    const std::string_view those = missing.size() == 1 ? "field" : "fields";
    const std::string_view verb = missing.size() == 1 ? "is" : "are";
    fault(node_, fmt::format("the {} {} {} missing here", those, quoted_words(missing), verb), hint);
}

const YamlNode* FieldReader::optional(std::string_view key, YamlKind kind) {
    const YamlNode* found = entry(key);
    return found != nullptr && expect(*found, kind) ? found : nullptr;
}

const YamlNode* FieldReader::required(std::string_view key, YamlKind kind) {
    require({key});
    return optional(key, kind);
}

const YamlNode* FieldReader::optional_children(std::string_view key, YamlKind kind) {
    const YamlNode* found = entry(key);
    const bool left_out = found == nullptr || found->kind == YamlKind::nothing;
    return left_out ? nullptr : optional(key, kind);
}

const YamlNode* FieldReader::optional_list(std::string_view key) {
    return optional_children(key, YamlKind::list);
}

const YamlNode* FieldReader::optional_map(std::string_view key) {
    return optional_children(key, YamlKind::map);
}

std::string FieldReader::text(std::string_view key) {
    const YamlNode* node = required(key, YamlKind::scalar);
    return node == nullptr ? std::string() : node->text;
}

std::string FieldReader::text_or(std::string_view key, std::string_view otherwise) {
    const YamlNode* node = optional(key, YamlKind::scalar);
    return node == nullptr ? std::string(otherwise) : node->text;
}

Rational FieldReader::to_number(const YamlNode& node) {
    const std::optional<Quantity> quantity = read_quantity(node, diagnostics_);
    if (!quantity) {
        ok_ = false;
        return {};
    }
    if (!quantity->is_number()) fault(node, "a plain number without a unit is wanted here");
    return quantity->value;
}

Rational FieldReader::number(std::string_view key) {
    const YamlNode* node = required(key, YamlKind::scalar);
    return node == nullptr ? Rational() : to_number(*node);
}

std::optional<Rational> FieldReader::optional_number(std::string_view key) {
    const YamlNode* node = optional(key, YamlKind::scalar);
    if (node == nullptr) return std::nullopt;
    return to_number(*node);
}

bool FieldReader::flag(std::string_view key) {
    const YamlNode* node = optional(key, YamlKind::scalar);
    if (node == nullptr) return false;
    if (node->text != "true" && node->text != "false") fault(*node, "`true` or `false` is wanted here");
    return node->text == "true";
}

const YamlNode* FieldReader::list(std::string_view key) {
    return required(key, YamlKind::list);
}

const YamlNode* FieldReader::map(std::string_view key) {
    return required(key, YamlKind::map);
}

}  // namespace rodwright
