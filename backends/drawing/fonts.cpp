#include "backends/drawing/fonts.hpp"

#include <fmt/format.h>

#include "compiler/world.hpp"

namespace rodwright::drawing {

namespace {

Diagnostic missing_font(const std::string& path, const std::string& why) {
    return diagnose(Code::cannot_draw, {}, fmt::format("the font `{}` cannot be used: {}", path, why))
        .hint("install the fonts-dejavu-core package");
}

std::optional<Font> load_font(const std::string& path, Diagnostics& diagnostics) {
    const ReadResult file = DiskWorld().read(path);
    if (!file.text) {
        diagnostics.add(missing_font(path, file.error));
        return std::nullopt;
    }
    std::optional<FontMetrics> metrics = FontMetrics::read(*file.text);
    if (!metrics) {
        diagnostics.add(missing_font(path, "it is not a TrueType font with Unicode characters"));
        return std::nullopt;
    }
    return Font{path, std::move(*metrics)};
}

}  // namespace

std::optional<Fonts> Fonts::load(const std::string& folder, Diagnostics& diagnostics) {
    std::optional<Font> regular = load_font(folder + "/DejaVuSans.ttf", diagnostics);
    std::optional<Font> bold = load_font(folder + "/DejaVuSans-Bold.ttf", diagnostics);
    if (!regular || !bold) return std::nullopt;
    return Fonts({std::move(*regular), std::move(*bold)});
}

std::optional<Fonts> Fonts::load(Diagnostics& diagnostics) {
    return load(RODWRIGHT_FONT_FOLDER, diagnostics);
}

double Fonts::plain_width(std::string_view text, FontFace face, double height) const {
    const FontMetrics& metrics = (*this)[face].metrics;
    double width = 0;
    for (const char32_t character : characters_of(text)) width += metrics.advance(character);
    return width * height / capital_height;
}

}  // namespace rodwright::drawing
