// The options of the commands that read a design.
#pragma once

#include <CLI/App.hpp>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

struct DesignOptions {
    std::string file;
    std::vector<std::string> set;  // "name=expression", as written
    std::string variant;           // empty: none
    std::string stdlib_folder;     // empty: the library inside the program
};

void add_design_options(CLI::App& command, DesignOptions& options);

// Name and expression of each --set; empty, with Code::bad_command reported, where one has no name or no `=`.
using Settings = std::vector<std::pair<std::string, std::string>>;
std::optional<Settings> read_settings(const std::vector<std::string>& written, Diagnostics& diagnostics);

}  // namespace rodwright
