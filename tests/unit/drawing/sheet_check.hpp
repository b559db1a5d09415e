// What every sheet must hold to, whatever it shows.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/text_run.hpp"

namespace rodwright::testing {

// Faults of a sheet, in words:
//   - something reaches out of the frame, or what belongs to the border into it or off the paper;
//   - two texts share paper;
//   - a line, an arc or a filled shape crosses a text, whatever it is for: a dimension's own too;
//   - a character is missing from the font that the text is set in.
// Allowed: a circle around a text's middle, which is what letters of parts stand in.
std::vector<std::string> faults_of(const drawing::Sheet& sheet, const drawing::Fonts& fonts);

}  // namespace rodwright::testing
