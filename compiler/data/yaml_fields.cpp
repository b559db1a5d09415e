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

FieldReader::FieldReader(const YamlNode& node, std::initializer_list<std::string_view> known,
                         Diagnostics& diagnostics)
    : node_(node), diagnostics_(diagnostics) {
    ok_ = expect_kind(node, YamlKind::map, diagnostics);
    if (!ok_) return;
    for (const YamlNode& entry : node.children) {
        if (std::ranges::find(known, std::string_view(entry.key)) != known.end()) continue;
        ok_ = false;
        const std::string nearest = nearest_name(entry.key, {known.begin(), known.end()});
        Diagnostic unknown = diagnose(Code::bad_data, entry.key_span,
                                      fmt::format("there is no field `{}` here", shortened(entry.key)));
        if (!nearest.empty()) unknown.help = fmt::format("write `{}`", nearest);
        diagnostics.add(std::move(unknown));
    }
}

void FieldReader::report(const YamlNode& node, std::string message) {
    ok_ = false;
    diagnostics_.add(diagnose(Code::bad_data, node.span, std::move(message)));
}

const YamlNode* FieldReader::optional(std::string_view key, YamlKind kind) {
    if (node_.kind != YamlKind::map) return nullptr;
    const YamlNode* entry = find_entry(node_, key);
    if (entry == nullptr) return nullptr;
    if (expect_kind(*entry, kind, diagnostics_)) return entry;
    ok_ = false;
    return nullptr;
}

const YamlNode* FieldReader::required(std::string_view key, YamlKind kind) {
    if (node_.kind == YamlKind::map && find_entry(node_, key) == nullptr) {
        report(node_, fmt::format("the field `{}` is missing here", key));
    }
    return optional(key, kind);
}

std::string FieldReader::text(std::string_view key) {
    const YamlNode* entry = required(key, YamlKind::scalar);
    return entry == nullptr ? std::string() : entry->text;
}

std::string FieldReader::text_or(std::string_view key, std::string_view otherwise) {
    const YamlNode* entry = optional(key, YamlKind::scalar);
    return entry == nullptr ? std::string(otherwise) : entry->text;
}

Rational FieldReader::to_number(const YamlNode& node) {
    const std::optional<Quantity> quantity = read_quantity(node, diagnostics_);
    if (!quantity) {
        ok_ = false;
        return {};
    }
    if (!quantity->is_number()) report(node, "a plain number without a unit is wanted here");
    return quantity->value;
}

Rational FieldReader::number(std::string_view key) {
    const YamlNode* entry = required(key, YamlKind::scalar);
    return entry == nullptr ? Rational() : to_number(*entry);
}

std::optional<Rational> FieldReader::optional_number(std::string_view key) {
    const YamlNode* entry = optional(key, YamlKind::scalar);
    if (entry == nullptr) return std::nullopt;
    return to_number(*entry);
}

bool FieldReader::flag(std::string_view key) {
    const YamlNode* entry = optional(key, YamlKind::scalar);
    if (entry == nullptr) return false;
    if (entry->text != "true" && entry->text != "false") report(*entry, "`true` or `false` is wanted here");
    return entry->text == "true";
}

const YamlNode* FieldReader::list(std::string_view key) {
    return required(key, YamlKind::list);
}

const YamlNode* FieldReader::map(std::string_view key) {
    return required(key, YamlKind::map);
}

}  // namespace rodwright
