#include "compiler/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright {

std::string plain_words(std::string_view name) {
    std::string words(name);
    std::ranges::replace(words, '_', ' ');
    return words;
}

std::string capitalised(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
    return text;
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
    return fmt::format("{}", fmt::join(words, between));
}

std::string one_of(const std::vector<std::string>& words) {
    if (words.size() < 2) return joined(words);
    return joined({words.begin(), words.end() - 1}) + " or " + words.back();
}

std::string all_of(const std::vector<std::string>& words) {
    if (words.size() < 2) return joined(words);
    return joined({words.begin(), words.end() - 1}) + " and " + words.back();
}

std::string counted(std::size_t count, std::string_view one) {
    return fmt::format("{} {}{}", count, one, count == 1 ? "" : "s");
}

}  // namespace rodwright
