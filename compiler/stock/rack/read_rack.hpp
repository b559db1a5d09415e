// Reads a shop's rack from its file; README.md has the format.
#pragma once

#include <optional>

#include "compiler/data/woods.hpp"
#include "compiler/stock/rack/rack.hpp"

namespace rodwright {

// Empty, with all that is wrong in `diagnostics`, if the file is not as it should be: Code::bad_data,
// Code::unknown_wood, Code::too_large past limits::rack_entries, rack_pieces or board_defects, and what
// read_yaml() finds.
std::optional<Rack> read_rack(const SourceManager& sources, FileId file, const WoodTable& woods,
                              Diagnostics& diagnostics);

}  // namespace rodwright
