// The data files that a run reads: the library's, and those that a maker keeps beside a design.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "compiler/data/shop.hpp"
#include "compiler/evaluate/design.hpp"

namespace rodwright {

// The path of the file of that name in the design's folder, if there is one.
std::optional<std::string> file_beside(const World& world, const std::string& design, std::string_view name);

// Adds the file's text to the sources. FileId::none, with Code::cannot_read, if it cannot be read.
FileId add_file(const World& world, const std::string& path, SourceManager& sources,
                Diagnostics& diagnostics);
// The same of a file of the library by its path in stdlib/: "data/shop.yaml".
FileId add_file(const LibraryFiles& library, const std::string& path, SourceManager& sources,
                Diagnostics& diagnostics);

// The library's shop, with the maker's own `shop.yaml` beside the design laid over it. Empty, with the reason
// reported, if one of the files cannot be read or is not as it should be.
std::optional<Shop> shop_of(const World& world, const LibraryFiles& library, const std::string& design,
                            SourceManager& sources, Diagnostics& diagnostics);

}  // namespace rodwright
