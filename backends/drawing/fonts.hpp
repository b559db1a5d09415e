// The two faces that every sheet is set in, DejaVu Sans regular and bold, from the folder that the build
// names.
#pragma once

#include <array>
#include <optional>
#include <string>

#include "backends/drawing/font_metrics.hpp"
#include "backends/drawing/sheet.hpp"
#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright::drawing {

// A capital's height in parts of the em, and how far letters reach above and below the baseline in parts of a
// capital's height (DejaVu Sans, from its outlines: capitals 1493, ascenders 1556, descenders -483 of 2048).
inline constexpr double capital_height = 1493.0 / 2048.0;
inline constexpr double reach_above = 1556.0 / 1493.0;
inline constexpr double reach_below = 483.0 / 1493.0;

struct Font {
    std::string path;
    FontMetrics metrics;
};

class Fonts {
  public:
    // Both faces from `folder`. Code::cannot_draw, and empty, if one is missing or not a font.
    static std::optional<Fonts> load(const std::string& folder, Diagnostics& diagnostics);
    // From the folder the build was told.
    static std::optional<Fonts> load(Diagnostics& diagnostics);

    const Font& operator[](FontFace face) const { return fonts_[static_cast<std::size_t>(face)]; }
    // Width on the paper of text without fractions, capitals `height` high.
    double plain_width(std::string_view text, FontFace face, double height) const;

  private:
    explicit Fonts(std::array<Font, 2> fonts) : fonts_(std::move(fonts)) {}
    std::array<Font, 2> fonts_;
};

}  // namespace rodwright::drawing
