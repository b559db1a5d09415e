// Data files that are built in.
#pragma once

#include <string_view>

#include "compiler/diagnostics/source.hpp"

namespace rodwright {

// The file of that path in the library: "data/loads.yaml". Throws std::logic_error if there is none.
FileId add_embedded(std::string_view path, SourceManager& sources);

}  // namespace rodwright
