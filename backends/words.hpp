// Words as the text backends write them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "compiler/graph/piece.hpp"

namespace rodwright {

// "side_apron" as people write it: "side apron".
std::string plain_words(std::string_view name);
// With a capital letter first, if the text starts with an ASCII letter.
std::string capitalised(std::string text);
// "a, b, c"
std::string joined(const std::vector<std::string>& words, std::string_view between = ", ");
// "a", "a or b", "a, b or c"
std::string one_of(const std::vector<std::string>& words);
// "1 part", "2 parts"
std::string counted(std::size_t count, std::string_view one);
// "white ash, quartered"; "wood not chosen" where `wood` is empty.
std::string wood_words(const Piece& piece, const std::string& wood);
// So that Markdown (CommonMark with tables) shows `text` as it is, in one line.
std::string markdown_text(std::string_view text);
// How many characters (code points) `text` has.
std::size_t character_count(std::string_view text);

}  // namespace rodwright
