#include "backends/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace rodwright {

std::string wood_words(const Piece& piece, const std::string& wood) {
    if (wood.empty()) return "wood not chosen";
    const auto found = std::ranges::find(piece.woods, wood, &Wood::name);
    if (found == piece.woods.end()) return plain_words(wood);
    const std::string common = found->common.empty() ? plain_words(found->name) : found->common;
    return found->cut.empty() ? common : common + ", " + found->cut;
}

std::vector<std::string> shop_notes(const Piece& piece, const Kind& kind, const LengthStyle& style) {
    std::vector<std::string> notes;
    const auto made = std::ranges::count_if(kind.parts, [&](PartId part) { return piece[part].made; });
    if (made == std::ssize(kind.parts)) {
        notes.emplace_back("made");
    } else if (made > 0) {
        notes.push_back(fmt::format("{} of {} made", made, kind.parts.size()));
    }
    for (const Axis axis : all_axes) {
        if (!kind.taken_over[static_cast<std::size_t>(axis)]) continue;
        notes.push_back(fmt::format("{} from the work: first cut to {}", size_name(axis),
                                    format_length(kind.cut(axis), style)));
    }
    return notes;
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
