// Sheets as a PDF file: the only place that knows libharu.
//
// The same sheets give the same bytes. Errors are Code::cannot_draw: a number that is not finite or far off
// the paper, a character that the font does not have (named with the text it is in), or what the library
// refuses.
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "backends/drawing/fonts.hpp"
#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

struct PdfInfo {
    std::string title;
    std::string subject;
    bool compressed = true;
    std::optional<std::chrono::sys_seconds> date = std::nullopt;  // of creation
};

// The whole file; empty if there was an error. Sheets with a title are in the file's outline, under their
// section where that has more than one.
std::optional<std::string> write_pdf(const std::vector<Sheet>& sheets, const Fonts& fonts,
                                     const PdfInfo& info, Diagnostics& diagnostics);

}  // namespace rodwright::drawing
