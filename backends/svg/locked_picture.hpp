// The picture that goes with E1002.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

// Parts that lock each other, as an SVG; ascending. Empty if it cannot be drawn, which has been reported.
std::optional<std::string> locked_picture(const BackendInput& input, const std::vector<PartId>& parts,
                                          Diagnostics& diagnostics);

}  // namespace rodwright
