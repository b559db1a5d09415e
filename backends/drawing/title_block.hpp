// The title block: those fields of ISO 7200 that a design has (title, document type, identification number,
// revision, sheet number and number of sheets, date of issue), with scale, units and the projection symbol
// beside them. A field without a value is left out.
#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "backends/drawing/projection.hpp"
#include "backends/drawing/text_layout.hpp"

namespace rodwright::drawing {

struct TitleBlock {
    std::string title;    // of the piece
    std::string subject;  // what the sheet shows
    std::string scale;    // "1:5"; empty where nothing is drawn to scale
    std::string units;    // "inches, to the nearest 1/32"
    std::string format;   // "A4"
    std::string date;     // "2024-05-01", or empty
    std::string number;   // of the drawings, or empty
    std::string revision;
    std::size_t sheet = 1;
    std::size_t sheets = 1;
    std::optional<ProjectionMethod> projection;  // where the sheet has views in projection
};

inline constexpr double title_block_height = 18;
// ISO 7200: at most 180 mm wide, in the lower right corner of the frame.
inline constexpr double title_block_width = 180;

// The block's place on a sheet with that frame.
Rect title_block_box(const Rect& frame);
// The frame without the strip that the title block stands in: where everything else is drawn.
Rect drawing_room(const Rect& frame);

void draw_title_block(Sheet& sheet, const TitleBlock& block, const Fonts& fonts);

// The day as `2024-05-01`, in UTC; empty without a time.
std::string date_text(const std::optional<std::chrono::sys_seconds>& time);

}  // namespace rodwright::drawing
