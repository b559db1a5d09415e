// Backends from modules (shared objects that use RODWRIGHT_BACKEND).
//
// A module is code: it is loaded only if its path is given, or from the backend folder of the install, which
// is rodwright/backends beside librodwright.so. The current folder is never searched.
#pragma once

#include <filesystem>
#include <memory>
#include <vector>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

std::filesystem::path backend_folder();

// The backend of the module in that file, or null with Code::bad_plugin reported: no such file, no shared
// object, a function missing, made for another version, or failing while it makes its backend. `path` is
// relative to the current folder or absolute. The module stays loaded until the program ends.
std::unique_ptr<Backend> load_backend(const std::filesystem::path& path, Diagnostics& diagnostics);

// Those that are part of the program, then those of `paths` in their order, then those of `folder` by file
// name. A module in `folder` with the name of one that is part of the program is not loaded: it is the same
// one. Two of the same name are otherwise an error. A module in `folder` that cannot be used is a warning.
std::vector<std::unique_ptr<Backend>> all_backends(const std::vector<std::filesystem::path>& paths,
                                                   const std::filesystem::path& folder,
                                                   Diagnostics& diagnostics);

}  // namespace rodwright
