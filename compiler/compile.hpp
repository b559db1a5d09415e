// The whole front end: a file to its piece.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"
#include "compiler/diagnostics/source.hpp"
#include "compiler/graph/piece.hpp"
#include "compiler/world.hpp"

namespace rodwright {

struct CompileOptions {
    std::string path;
    std::vector<std::pair<std::string, std::string>> settings;  // parameter and the text of its value
    std::optional<std::string> variant;
    std::optional<std::string> stdlib_folder;  // instead of the library in the program
};

struct Compilation {
    std::unique_ptr<SourceManager> sources;
    Diagnostics diagnostics;
    std::optional<Piece> piece;  // empty if there were errors
};

// Never throws for anything that the files can hold.
Compilation compile(const World& world, const CompileOptions& options);

}  // namespace rodwright
