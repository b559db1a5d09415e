// Reading the fields of a map of a data file, with what is wrong reported where it stands.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "compiler/data/yaml_reader.hpp"
#include "compiler/quantity/quantity.hpp"

namespace rodwright {

// The entry of `map` with that key, or null.
const YamlNode* find_entry(const YamlNode& map, std::string_view key);
// Reports Code::bad_data and is false unless `node` is of that kind.
bool expect_kind(const YamlNode& node, YamlKind kind, Diagnostics& diagnostics);
// A scalar as a number of the language, with or without a unit. Reports and is empty otherwise.
std::optional<Quantity> read_quantity(const YamlNode& node, Diagnostics& diagnostics);
// As much of `text` as fits in a message.
std::string shortened(std::string_view text);
// "`a`, `b`".
std::string quoted_words(const std::vector<std::string_view>& words);

class FieldReader {
  public:
    // Reports `node` if it is not a map, and every key that is not in `known`, with what could be meant.
    FieldReader(const YamlNode& node, std::initializer_list<std::string_view> known,
                Diagnostics& diagnostics);

    // All of them report what is missing or of another kind, and give back an empty value then.
    std::string text(std::string_view key);
    std::string text_or(std::string_view key, std::string_view otherwise);
    Rational number(std::string_view key);  // a plain number, not below zero
    std::optional<Rational> optional_number(std::string_view key);
    bool flag(std::string_view key);  // `true` or `false`; false where it is not there
    const YamlNode* list(std::string_view key);
    const YamlNode* map(std::string_view key);

    // For values that the caller reads in its own way. The entry, null where it is not there.
    const YamlNode* entry(std::string_view key) const;
    // The same, but a scalar; null, and reported, where it is something else. `scalar` also reports what is
    // missing.
    const YamlNode* scalar(std::string_view key) { return required(key, YamlKind::scalar); }
    const YamlNode* optional_scalar(std::string_view key) { return optional(key, YamlKind::scalar); }
    // Null also where the key has no value, as when the last entry of a list is gone.
    const YamlNode* optional_list(std::string_view key);
    const YamlNode* optional_map(std::string_view key);
    bool expect(const YamlNode& node, YamlKind kind);  // reports `node` if it is something else
    // Reports those that are missing, all in one.
    void require(std::initializer_list<std::string_view> keys, const std::string& hint = {});
    void fault(const YamlNode& node, std::string message, std::string hint = {});
    void fault(Diagnostic diagnostic);
    // For what was reported elsewhere.
    void spoil() { ok_ = false; }
    Diagnostics& diagnostics() { return diagnostics_; }

    bool ok() const { return ok_; }

  private:
    const YamlNode* required(std::string_view key, YamlKind kind);
    const YamlNode* optional(std::string_view key, YamlKind kind);
    const YamlNode* optional_children(std::string_view key, YamlKind kind);
    Rational to_number(const YamlNode& node);

    const YamlNode& node_;
    Diagnostics& diagnostics_;
    bool ok_ = true;
};

}  // namespace rodwright
