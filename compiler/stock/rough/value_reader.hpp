// Reading a data file whose values may lie over those of another: what it does not name stays as it was.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "compiler/data/yaml_fields.hpp"

namespace rodwright {

enum class Reading {
    complete,  // a value that is not there is reported
    overlay,   // it keeps what it was
};

// The entries of one map. Everything that is wrong is reported under Code::bad_data at its place, and leaves
// the value as it was.
class ValueReader {
  public:
    ValueReader(const YamlNode& map, Reading reading, Diagnostics& diagnostics);

    void length(std::string_view key, Rational& value);  // zero or more
    void length_above_zero(std::string_view key, Rational& value);
    void share(std::string_view key, Rational& value);  // a percentage, zero or more
    void flag(std::string_view key, bool& value);       // `true` or `false`
    void word(std::string_view key, std::string& value);
    // All entries, whatever their keys.
    void every_length(std::map<std::string, Rational>& values);
    void every_share(std::map<std::string, Rational>& values);
    // The map under that key, if it is there.
    std::optional<ValueReader> section(std::string_view key);
    // A map in this one that need not be whole, or has to be.
    ValueReader within(const YamlNode& map, Reading reading) const { return {map, reading, diagnostics_}; }

    Reading reading() const { return reading_; }
    const std::vector<YamlNode>& entries() const { return map_.children; }

    // Whether the file names that value.
    bool names(std::string_view key) const { return find_entry(map_, key) != nullptr; }
    // Reports `key`, or the whole map if it is not there.
    void refuse(std::string_view key, std::string message, std::string hint = {});
    // Reports the entries that nobody asked for.
    void finish();

  private:
    const YamlNode* entry(std::string_view key, YamlKind kind);

    const YamlNode& map_;
    Reading reading_;
    Diagnostics& diagnostics_;
    std::vector<std::string> known_;
};

}  // namespace rodwright
