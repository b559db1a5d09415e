#include "backends/drawing/pdf/to_unicode.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "backends/drawing/font_metrics.hpp"

namespace rodwright::drawing {

namespace {

std::set<std::uint32_t> blocks_used(const std::vector<Sheet>& sheets) {
    std::set<std::uint32_t> blocks;
    for (const Sheet& sheet : sheets) {
        for (const Item& item : sheet.items) {
            const auto* text = std::get_if<Text>(&item);
            if (text == nullptr) continue;
            for (const char32_t character : characters_of(text->text)) {
                constexpr char32_t past_two_bytes = 0x10000;
                if (character < past_two_bytes) blocks.insert(static_cast<std::uint32_t>(character) >> 8U);
            }
        }
    }
    return blocks;
}

}  // namespace

std::string to_unicode_map(const std::vector<Sheet>& sheets) {
    constexpr std::size_t most_ranges = 100;  // in one operator
    const std::set<std::uint32_t> used = blocks_used(sheets);
    const std::vector<std::uint32_t> blocks(used.begin(), used.end());
    std::string map =
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
        "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    for (std::size_t from = 0; from < blocks.size(); from += most_ranges) {
        const std::size_t to = std::min(from + most_ranges, blocks.size());
        map += fmt::format("{} beginbfrange\n", to - from);
        for (std::size_t i = from; i < to; ++i)
            map += fmt::format("<{0:02X}00> <{0:02X}FF> <{0:02X}00>\n", blocks[i]);
        map += "endbfrange\n";
    }
    return map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

}  // namespace rodwright::drawing
