// The commit that a design is at, read from the files of its version control (git's repository layout): no
// program is run.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "compiler/world.hpp"

namespace rodwright {

struct Revision {
    std::string name;   // the commit's first seven digits
    std::string error;  // why there is none
};

// Of the repository that holds `folder`, an absolute path, or a folder above it. Changes that were not
// committed are not noticed.
Revision committed_revision(const std::filesystem::path& folder, const World& world);

}  // namespace rodwright
