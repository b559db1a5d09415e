// Lines on paper: telling what a curve is from points along it, and giving each line once.
#pragma once

#include <functional>
#include <vector>

#include "compiler/solid/solid_kernel.hpp"

namespace rodwright {

namespace paper {

inline constexpr double chord_tolerance = 0.01;  // mm between a curve and the polyline for it
inline constexpr double same_place = 1e-3;       // mm: lines nearer to each other than this are one
inline constexpr double shortest_line = 0.01;    // mm: shorter lines and gaps are the kernel's noise

}  // namespace paper

using PaperCurve = std::function<PaperPoint(double)>;

// Points along a curve from one parameter to another, within chord_tolerance of it.
std::vector<PaperPoint> sample(const PaperCurve& curve, double from, double to);

// Sets the line's shape, points, centre and radius from two or more points along a curve: a line if they lie
// on one (it reaches as far as they do, also where the curve doubles back), an arc if they lie on a circle,
// else the polyline.
void set_shape(ViewLine& line, std::vector<PaperPoint> along);

// The same picture with each line of the paper once. Where lines cover each other one of them is kept: one
// that is drawn as an edge (sharp, outline) before smooth ones and seams, then visible before hidden, then
// that of the least tag. What is left of a part's line in pieces that touch is joined. In a fixed order:
// lines, arcs, curves.
std::vector<ViewLine> each_line_once(const std::vector<ViewLine>& lines);

}  // namespace rodwright
