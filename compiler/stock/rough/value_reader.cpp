#include "compiler/stock/rough/value_reader.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright {
namespace {

void report(const YamlNode& node, std::string message, std::string hint, Diagnostics& diagnostics) {
    diagnostics.add(diagnose(Code::bad_data, node.span, std::move(message)).hint(std::move(hint)));
}

std::optional<Rational> read_length(const YamlNode& node, Diagnostics& diagnostics) {
    const std::optional<Quantity> quantity = read_quantity(node, diagnostics);
    if (!quantity) return std::nullopt;
    if (quantity->is_length()) return quantity->value;
    report(node, "a length is wanted here", "write the unit: `1/4 in` or `6mm`", diagnostics);
    return std::nullopt;
}

std::optional<Rational> read_share(const YamlNode& node, Diagnostics& diagnostics) {
    const std::optional<Quantity> quantity = read_quantity(node, diagnostics);
    if (!quantity) return std::nullopt;
    const Dimension& dimension = quantity->dimension;
    const bool percentage = dimension.dimensionless() && dimension.ratio == RatioKind::percentage;
    if (percentage) return quantity->value;
    report(node, "a percentage is wanted here", "write `20 %`", diagnostics);
    return std::nullopt;
}

}  // namespace

ValueReader::ValueReader(const YamlNode& map, Reading reading, Diagnostics& diagnostics)
    : map_(map), reading_(reading), diagnostics_(diagnostics) {
    expect_kind(map, YamlKind::map, diagnostics);
}

const YamlNode* ValueReader::entry(std::string_view key, YamlKind kind) {
    known_.emplace_back(key);
    if (map_.kind != YamlKind::map) return nullptr;
    const YamlNode* found = find_entry(map_, key);
    if (found == nullptr && reading_ == Reading::complete) {
        diagnostics_.add(
            diagnose(Code::bad_data, map_.span, fmt::format("the field `{}` is missing here", key)));
    }
    return found != nullptr && expect_kind(*found, kind, diagnostics_) ? found : nullptr;
}

void ValueReader::length(std::string_view key, Rational& value) {
    const YamlNode* node = entry(key, YamlKind::scalar);
    if (node == nullptr) return;
    if (const auto read = read_length(*node, diagnostics_)) value = *read;
}

void ValueReader::length_above_zero(std::string_view key, Rational& value) {
    length(key, value);
    if (names(key) && value <= 0) refuse(key, "a length above zero is wanted here");
}

void ValueReader::share(std::string_view key, Rational& value) {
    const YamlNode* node = entry(key, YamlKind::scalar);
    if (node == nullptr) return;
    if (const auto read = read_share(*node, diagnostics_)) value = *read;
}

void ValueReader::flag(std::string_view key, bool& value) {
    const YamlNode* node = entry(key, YamlKind::scalar);
    if (node == nullptr) return;
    if (node->text == "true" || node->text == "false") {
        value = node->text == "true";
    } else {
        refuse(key, "`true` or `false` is wanted here");
    }
}

void ValueReader::word(std::string_view key, std::string& value) {
    if (const YamlNode* node = entry(key, YamlKind::scalar)) value = node->text;
}

void ValueReader::every_length(std::map<std::string, Rational>& values) {
    for (const YamlNode& node : map_.children) length(node.key, values[node.key]);
}

void ValueReader::every_share(std::map<std::string, Rational>& values) {
    for (const YamlNode& node : map_.children) share(node.key, values[node.key]);
}

std::optional<ValueReader> ValueReader::section(std::string_view key) {
    const YamlNode* map = entry(key, YamlKind::map);
    if (map == nullptr) return std::nullopt;
    return within(*map, reading_);
}

void ValueReader::refuse(std::string_view key, std::string message, std::string hint) {
    const YamlNode* node = find_entry(map_, key);
    report(node == nullptr ? map_ : *node, std::move(message), std::move(hint), diagnostics_);
}

void ValueReader::finish() {
    if (map_.kind != YamlKind::map) return;
    for (const YamlNode& node : map_.children) {
        if (std::ranges::find(known_, node.key) != known_.end()) continue;
        Diagnostic unknown = diagnose(Code::bad_data, node.key_span,
                                      fmt::format("there is no field `{}` here", shortened(node.key)));
        const std::string nearest = nearest_name(node.key, known_);
        if (!nearest.empty()) unknown.help = fmt::format("write `{}`", nearest);
        diagnostics_.add(std::move(unknown));
    }
}

}  // namespace rodwright
