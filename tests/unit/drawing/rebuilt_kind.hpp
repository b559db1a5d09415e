// A part made again from nothing but what its sheet prints.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/axis_view.hpp"
#include "compiler/graph/piece.hpp"

namespace rodwright::testing {

// A printed length in millimetres; `rounded` where a `~` stands before it. Fails the test on anything else.
struct PrintedLength {
    Rational millimetres;
    bool rounded = false;
};
PrintedLength printed_length(std::string text, LengthUnit unit);

// The kind with every feature's place and size read from the rows of its feature table (`view` is its front
// view), and its sizes from `sizes`: length, width, thickness over all, as printed. Of `kind` itself only the
// class of each feature is used: on which axis its profile is swept, which edges are eased. `rounded` is set
// where a figure was.
Kind rebuilt(const Kind& kind, const std::vector<std::vector<std::string>>& rows,
             const drawing::AxisView& view, const LengthStyle& style, bool& rounded);

}  // namespace rodwright::testing
