// Sheet sizes, frames, and a sheet to begin with.
//
// A4 210 x 297 and A3 297 x 420 after ISO 5457, frame 20 mm from the left edge (for filing) and 10 mm from
// the others; Letter 8.5 x 11 in and Tabloid 11 x 17 in, sizes A and B of ANSI/ASME Y14.1, with its margins
// (0.38 and 0.25 in for A, 0.62 and 0.38 in for B; from memory of the standard).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "backends/drawing/zones.hpp"

namespace rodwright::drawing {

struct SheetFormat {
    std::string word;  // "a4", as the option is written
    std::string name;  // "A4", as the title block shows it
    double width = 0;
    double height = 0;
    double left = 0;  // margins
    double right = 0;
    double top = 0;
    double bottom = 0;
    Zones zones;
};

const std::vector<SheetFormat>& sheet_formats();
const SheetFormat* find_sheet_format(const std::string& word);

// A sheet with its frame and border drawn.
Sheet framed_sheet(const SheetFormat& format, std::string title);

}  // namespace rodwright::drawing
