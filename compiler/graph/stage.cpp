#include "compiler/graph/stage.hpp"

#include <algorithm>
#include <array>

namespace rodwright {

static constexpr std::array<std::string_view, stage_count> words = {
    "mill", "lay_out", "joinery", "shaping", "sanding", "assembly", "finishing", "fastening"};

std::string_view stage_word(Stage stage) {
    return words[static_cast<std::size_t>(stage)];
}

std::optional<Stage> find_stage(std::string_view word) {
    const auto* const found = std::ranges::find(words, word);
    if (found == words.end()) return std::nullopt;
    return static_cast<Stage>(found - words.begin());
}

std::vector<std::string> stage_words() {
    return {words.begin(), words.end()};
}

}  // namespace rodwright
