// What every sheet must hold to, whatever it shows.
#pragma once

#include <string>
#include <vector>

#include "backends/drawing/text_run.hpp"

namespace rodwright::testing {

// Faults of a sheet, in words: things outside the frame, text on text, text on a drawn edge.
std::vector<std::string> faults_of(const drawing::Sheet& sheet, const drawing::Fonts& fonts);

}  // namespace rodwright::testing
