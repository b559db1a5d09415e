// The drawings of the whole piece without the sheets that they stand on.
#pragma once

#include "backends/drawing/projected.hpp"
#include "backends/packet/context.hpp"

namespace rodwright::packet {

// Between the frame of a sheet and the drawings on it, mm.
inline constexpr double sheet_edge = 6;

// Three views with sizes and letters, as large as the room allows. Returns their scale, `1:5`.
std::string draw_arrangement(drawing::Sheet& sheet, const Context& context, const drawing::Rect& room,
                             const drawing::PartLabel& label);

// Every part moved out along the way it goes in, with trails and letters.
void draw_taken_apart(drawing::Sheet& sheet, const Context& context, const drawing::Rect& room,
                      const drawing::PartLabel& label);

// How far from one another parts of the piece are drawn when they are moved out, mm.
double apart_by(const Piece& piece);

// Some of the parts, each moved by its own way (`moves`, by part), with trails and letters.
void draw_moved(drawing::Sheet& sheet, const Context& context, const drawing::Rect& room,
                const drawing::PartLabel& label, const std::vector<PartId>& parts,
                const std::vector<Point3>& moves);

}  // namespace rodwright::packet
