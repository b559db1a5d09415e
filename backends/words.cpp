#include "backends/words.hpp"

#include <algorithm>

namespace rodwright {

std::string wood_words(const Piece& piece, const std::string& wood) {
    if (wood.empty()) return "wood not chosen";
    const auto found = std::ranges::find(piece.woods, wood, &Wood::name);
    if (found == piece.woods.end()) return plain_words(wood);
    const std::string common = found->common.empty() ? plain_words(found->name) : found->common;
    return found->cut.empty() ? common : common + ", " + found->cut;
}

std::string markdown_text(std::string_view text) {
    std::string shown;
    for (const char c : text) {
        if (std::string_view("\\*`<[|#").find(c) != std::string_view::npos) shown += '\\';
        shown += c == '\n' || c == '\r' ? ' ' : c;
    }
    return shown;
}

std::size_t character_count(std::string_view text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

}  // namespace rodwright
