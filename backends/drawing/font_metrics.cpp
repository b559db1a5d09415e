#include "backends/drawing/font_metrics.hpp"

#include <algorithm>
#include <array>

#include "compiler/diagnostics/utf8.hpp"

namespace rodwright::drawing {

namespace {

// Big-endian numbers out of a font; past the end everything is 0, so that a broken font reads as an empty
// one.
class FontBytes {
  public:
    explicit FontBytes(std::string_view bytes) : bytes_(bytes) {}
    std::uint32_t u8(std::size_t at) const {
        return at < bytes_.size() ? static_cast<unsigned char>(bytes_[at]) : 0U;
    }
    std::uint32_t u16(std::size_t at) const { return u8(at) << 8U | u8(at + 1); }
    std::uint32_t u32(std::size_t at) const { return u16(at) << 16U | u16(at + 2); }

    // Where the table starts, or 0.
    std::size_t table(std::string_view tag) const {
        const std::size_t count = u16(4);
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t entry = 12 + 16 * i;
            if (bytes_.substr(std::min(entry, bytes_.size()), 4) == tag) return u32(entry + 8);
        }
        return 0;
    }

  private:
    std::string_view bytes_;
};

// The Unicode subtable of format 4, or 0.
std::size_t unicode_map(const FontBytes& font, std::size_t cmap) {
    const std::size_t count = font.u16(cmap + 2);
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t entry = cmap + 4 + 8 * i;
        const bool unicode = font.u16(entry) == 3 && font.u16(entry + 2) == 1;
        const std::size_t table = cmap + font.u32(entry + 4);
        if (unicode && font.u16(table) == 4) return table;
    }
    return 0;
}

struct CharacterRange {
    std::uint32_t first = 0;
    std::uint32_t last = 0;
    std::uint32_t delta = 0;
    std::uint32_t offset = 0;
    std::size_t offset_at = 0;

    std::uint32_t glyph(const FontBytes& font, std::uint32_t character) const {
        if (offset == 0) return (character + delta) & 0xffffU;
        const std::uint32_t found = font.u16(offset_at + offset + 2 * (character - first));
        return found == 0 ? 0 : (found + delta) & 0xffffU;
    }
};

CharacterRange range_at(const FontBytes& font, std::size_t map, std::size_t count, std::size_t index) {
    const std::size_t ends = map + 14;
    const std::size_t starts = ends + 2 * count + 2;
    const std::size_t deltas = starts + 2 * count;
    const std::size_t offsets = deltas + 2 * count;
    return {font.u16(starts + 2 * index), font.u16(ends + 2 * index), font.u16(deltas + 2 * index),
            font.u16(offsets + 2 * index), offsets + 2 * index};
}

char32_t decode(std::string_view sequence) {
    constexpr std::array<unsigned, 5> lead_bits = {0, 0x7f, 0x1f, 0x0f, 0x07};
    char32_t value = static_cast<unsigned char>(sequence[0]) & lead_bits[sequence.size()];
    for (const char byte : sequence.substr(1))
        value = value << 6U | (static_cast<unsigned char>(byte) & 0x3fU);
    return value;
}

}  // namespace

std::optional<FontMetrics> FontMetrics::read(std::string_view bytes) {
    const FontBytes font(bytes);
    const std::size_t cmap = font.table("cmap");
    const std::size_t hmtx = font.table("hmtx");
    const std::size_t map = cmap == 0 ? 0 : unicode_map(font, cmap);
    const std::uint32_t em = font.u16(font.table("head") + 18);
    const std::uint32_t widths = font.u16(font.table("hhea") + 34);
    if (map == 0 || hmtx == 0 || em == 0 || widths == 0) return std::nullopt;
    FontMetrics metrics;
    const std::size_t count = font.u16(map + 6) / 2;
    for (std::size_t i = 0; i < count; ++i) {
        const CharacterRange segment = range_at(font, map, count, i);
        for (std::uint32_t c = segment.first; c <= segment.last && c < 0xffffU; ++c) {
            const std::uint32_t glyph = segment.glyph(font, c);
            if (glyph == 0) continue;
            const std::uint32_t width = font.u16(hmtx + 4 * std::min(glyph, widths - 1));
            if (c >= metrics.advances_.size()) metrics.advances_.resize(c + 1, absent);
            metrics.advances_[c] = static_cast<double>(width) / em;
        }
    }
    return metrics;
}

std::u32string characters_of(std::string_view utf8) {
    std::u32string characters;
    while (!utf8.empty()) {
        const std::size_t length = utf8_sequence(utf8);
        characters.push_back(length == 0 ? U'\ufffd' : decode(utf8.substr(0, length)));
        utf8.remove_prefix(length == 0 ? 1 : length);
    }
    return characters;
}

}  // namespace rodwright::drawing
