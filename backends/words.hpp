// Words as the text backends write them.
#pragma once

#include <string>
#include <string_view>

#include "compiler/graph/piece.hpp"
#include "compiler/words.hpp"

namespace rodwright {

// "white ash, quartered"; "wood not chosen" where `wood` is empty.
std::string wood_words(const Piece& piece, const std::string& wood);
// What is made already, and what is cut over its size to be marked from the work, a text each.
std::vector<std::string> shop_notes(const Piece& piece, const Kind& kind, const LengthStyle& style);
// So that Markdown (CommonMark with tables) shows `text` as it is, in one line.
std::string markdown_text(std::string_view text);
// How many characters (code points) `text` has.
std::size_t character_count(std::string_view text);

}  // namespace rodwright
