// Words as people write them, for every text that a stage or a backend makes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rodwright {

// "side_apron" as people write it: "side apron".
std::string plain_words(std::string_view name);
// With a capital letter first, if the text starts with an ASCII letter.
std::string capitalised(std::string text);
// "a, b, c"
std::string joined(const std::vector<std::string>& words, std::string_view between = ", ");
// "a", "a or b", "a, b or c"
std::string one_of(const std::vector<std::string>& words);
// "a", "a and b", "a, b and c"
std::string all_of(const std::vector<std::string>& words);
// "1 part", "2 parts"
std::string counted(std::size_t count, std::string_view one);

}  // namespace rodwright
