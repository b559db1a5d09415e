// A sheet as an SVG 1.1 document (W3C Recommendation), readable by people who do not see it: title and
// description, a group with its own title for each view, part and feature.
//
// One user unit is one millimetre. Text is set in the same places as in the PDF, in whatever face stands in
// for DejaVu Sans where that is missing.
#pragma once

#include <string>

#include "backends/drawing/fonts.hpp"
#include "backends/drawing/sheet.hpp"

namespace rodwright::drawing {

// `window`: the part of the sheet that is shown. The same sheet gives the same bytes.
std::string write_svg(const Sheet& sheet, const Rect& window, const std::string& description,
                      const Fonts& fonts);

// `&`, `<`, `>` and quotes as XML writes them in text and attributes.
std::string xml_text(std::string_view text);

}  // namespace rodwright::drawing
