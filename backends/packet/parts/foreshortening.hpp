// A long part drawn with a stretch left out, so that the rest can be drawn larger.
#pragma once

#include <optional>

#include "backends/drawing/projected.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::packet {

// Along the paper's x of a view of the part, model millimetres.
struct Foreshortening {
    double from = 0;  // what is left out
    double to = 0;
    double gap = 0;  // what stands for it

    double at(double x) const { return x <= from ? x : x < to ? from : x - removed(); }
    double removed() const { return to - from - gap; }
};

// The longest stretch in which nothing begins, ends or curves, but for a stub at either end; empty where that
// is too short to be worth it. `body_left` is where the visible body begins in the view.
std::optional<Foreshortening> foreshortening(const Kind& kind, Direction along, double body_left);

// The view without that stretch, the rest of it moved up.
drawing::Projected shortened(const drawing::Projected& view, const Foreshortening& stretch);

// A narrow line with a zigzag where the drawing is broken (ISO 128-2; from memory), upright at x, past both
// ends.
void draw_break_line(drawing::Sheet& sheet, double x, double low, double high);

}  // namespace rodwright::packet
