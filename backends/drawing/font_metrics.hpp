// What a TrueType font says about its glyphs: which characters it has and how far each moves the pen. Enough
// to set text without asking a PDF library, so that layout can be tested without one.
//
// Reads `head`, `hhea`, `hmtx` and a format 4 `cmap` (Basic Multilingual Plane), as ISO/IEC 14496-22 (Open
// Font Format) lays them out.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rodwright::drawing {

class FontMetrics {
  public:
    // Empty if `bytes` is no such font.
    static std::optional<FontMetrics> read(std::string_view bytes);

    bool has(char32_t character) const {
        return character < advances_.size() && advances_[character] != absent;
    }
    // In parts of the em; 0 for a character the font does not have.
    double advance(char32_t character) const { return has(character) ? advances_[character] : 0; }

  private:
    static constexpr double absent = -1;
    std::vector<double> advances_;  // by character: breaking lines asks for them more than for anything else
};

// The characters of UTF-8 text; a byte that is not part of one comes out as U+FFFD.
std::u32string characters_of(std::string_view utf8);

}  // namespace rodwright::drawing
