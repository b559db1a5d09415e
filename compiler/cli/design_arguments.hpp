// The words of the command line that say which design, and how.
#pragma once

#include <CLI/App.hpp>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "compiler/compile.hpp"
#include "compiler/diagnostics/diagnostic.hpp"

namespace rodwright {

struct DesignArguments {
    std::string file;
    std::vector<std::string> set;  // "name=expression", as written
    std::string variant;           // empty: none
    std::string stdlib_folder;     // empty: the library inside the program
};

void add_design_arguments(CLI::App& command, DesignArguments& options);
void add_stdlib_option(CLI::App& command, std::string& folder);
// A word of the command line; empty where it was not given.
std::optional<std::string> if_given(const std::string& word);

// Name and expression of each --set; empty, with Code::bad_command reported, where one has no name or no `=`.
using Settings = std::vector<std::pair<std::string, std::string>>;
std::optional<Settings> read_settings(const std::vector<std::string>& written, Diagnostics& diagnostics);

// Reads and places the design. Empty if it never came to that; the reason is reported.
std::optional<Compilation> compile_design(const DesignArguments& arguments, Diagnostics& diagnostics);

}  // namespace rodwright
