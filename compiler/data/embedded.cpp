#include "compiler/data/embedded.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>

#include "compiler/stdlib.hpp"

namespace rodwright {

FileId add_embedded(std::string_view path, SourceManager& sources) {
    const auto file = std::ranges::find(stdlib_files(), path, &EmbeddedFile::path);
    if (file == stdlib_files().end()) throw std::logic_error("the library has no " + std::string(path));
    return sources.add(std::string(file->path), std::string(file->text), true);
}

}  // namespace rodwright
