#include "backends/drawing/sheet_format.hpp"

#include <algorithm>

namespace rodwright::drawing {

namespace {

constexpr double inch = 25.4;

}  // namespace

const std::vector<SheetFormat>& sheet_formats() {
    using Sides = Zones::Sides;
    static const std::vector<SheetFormat> formats = {
        {"a4", "A4", 210, 297, 20, 10, 10, 10, {Sides::upper_and_right}},
        {"a3", "A3", 420, 297, 20, 10, 10, 10, {Sides::all}},
        {"letter",
         "Letter",
         8.5 * inch,
         11 * inch,
         0.25 * inch,
         0.25 * inch,
         0.38 * inch,
         0.38 * inch,
         {Sides::none}},
        {"tabloid",
         "Tabloid",
         17 * inch,
         11 * inch,
         0.62 * inch,
         0.62 * inch,
         0.38 * inch,
         0.38 * inch,
         {Sides::all, 4.25 * inch, 5.5 * inch, true}},
    };
    return formats;
}

const SheetFormat* find_sheet_format(const std::string& word) {
    const auto& formats = sheet_formats();
    const auto found =
        std::find_if(formats.begin(), formats.end(), [&](const SheetFormat& f) { return f.word == word; });
    return found == formats.end() ? nullptr : &*found;
}

Sheet framed_sheet(const SheetFormat& format, std::string title) {
    Sheet sheet;
    sheet.title = std::move(title);
    sheet.width = format.width;
    sheet.height = format.height;
    sheet.frame = {format.left, format.bottom, format.width - format.right, format.height - format.top};
    sheet.rectangle(LineRole::frame, sheet.frame);
    draw_border(sheet, format.zones);
    return sheet;
}

}  // namespace rodwright::drawing
