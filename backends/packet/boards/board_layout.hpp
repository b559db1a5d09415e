// The picture of one board or sheet: its outline, what is wrong with it, the cuts with their numbers, and
// what each piece becomes.
#pragma once

#include "backends/drawing/sheet.hpp"
#include "backends/drawing/text_run.hpp"
#include "compiler/stock/plan/wood_plan.hpp"

namespace rodwright::packet {

struct BoardPicture {
    const PlannedBoard& board;
    const LengthStyle& style;
    double factor = 1;      // paper over wood
    drawing::Point corner;  // of the board's first end and first edge, on the sheet
    double low = 0;         // where letters above the board may stand, along x
    double high = 0;
};

// Above the board, where some piece is too small for its letter.
inline constexpr double letters_over_board = 14;

bool needs_letters_over(const BoardPicture& picture, const drawing::Fonts& fonts);
// The first end is on the left, the first edge below.
void draw_board(drawing::Sheet& sheet, const BoardPicture& picture, const drawing::Fonts& fonts);

}  // namespace rodwright::packet
