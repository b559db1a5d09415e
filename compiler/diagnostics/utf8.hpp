// Whether bytes are text.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace rodwright {

// The length in bytes of the well-formed sequence that `text` starts with, or 0 if there is none.
std::size_t utf8_sequence(std::string_view text);

// The offset of the first byte that no well-formed UTF-8 sequence starts at (Unicode, table 3-7: no overlong
// forms, no surrogates, nothing past U+10FFFF); empty if all of `text` is UTF-8.
std::optional<std::size_t> first_bad_utf8(std::string_view text);

}  // namespace rodwright
