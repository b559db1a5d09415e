// Reading what several of the work plan's data files hold.
#pragma once

#include <algorithm>
#include <optional>
#include <span>
#include <string_view>

#include "compiler/data/yaml_fields.hpp"

namespace rodwright {

// The entry of that key as one of `words`, which stand in the order of the enum. Reports what is something
// else; the first where the key is not there and may be left out.
template <typename Enum>
Enum word_of(FieldReader& fields, std::string_view key, std::span<const std::string_view> words,
             bool may_be_left_out = false) {
    const YamlNode* node = may_be_left_out ? fields.optional_scalar(key) : fields.scalar(key);
    if (node == nullptr) return Enum{};
    const auto found = std::ranges::find(words, node->text);
    if (found != words.end()) return static_cast<Enum>(found - words.begin());
    fields.fault(
        *node, "`" + shortened(node->text) + "` is not one of " + quoted_words({words.begin(), words.end()}));
    return Enum{};
}

// A time in seconds, not below zero; 0 where the key is not there.
Rational seconds_of(FieldReader& fields, std::string_view key);

}  // namespace rodwright
